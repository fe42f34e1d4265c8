using InfusionSim.Plots.Styling;
using SkiaSharp;

namespace InfusionSim.Plots.Labels;

/// <summary>Puts a text on a line: along it, where it is straight, away from its ends and from every other line and label.</summary>
internal static class LineLabelPlacer
{
    private const float Step = 3;
    private const float EndGap = 9;
    private const float Apart = 260;

    /// <summary>Length from which a line has a further label, if nothing else is said [px].</summary>
    internal const float LongLine = 600;

    /// <summary>Puts a text on the lines of one level; a level without room stays unlabelled.</summary>
    /// <param name="sheet">What is taken.</param>
    /// <param name="text">What to say.</param>
    /// <param name="lines">The level's lines [px].</param>
    /// <param name="others">Points of all other levels' lines [px].</param>
    /// <param name="isOnCloth">Whether a point of the picture has cloth.</param>
    /// <param name="near">Where the neighbouring level has its label, so that labels form a row; may be null [px].</param>
    /// <param name="longLine">Length from which a further line of the level has a label of its own [px].</param>
    /// <returns>Where the first label lies; null when none has room [px].</returns>
    internal static SKPoint? Put(
        LabelSheet sheet,
        string text,
        IEnumerable<IReadOnlyList<SKPoint>> lines,
        IReadOnlyList<SKPoint> others,
        Func<SKPoint, bool> isOnCloth,
        SKPoint? near,
        float longLine = LongLine)
    {
        var halfWidth = TextStyle.Label.Measure(text) / 2 + 4;
        var halfHeight = TextStyle.Label.Size * 0.52f;
        SKPoint? first = null;
        foreach (var line in lines.Select(Resample).OrderByDescending(line => line.Count))
        {
            if (first is not null && line.Count * Step < longLine)
            {
                break;
            }

            if (Best(sheet, line, halfWidth, halfHeight, others, isOnCloth, first is null ? near : null, first, Math.Min(Apart, longLine)) is not { } box)
            {
                continue;
            }

            sheet.Put(new PlacedLabel(text, box));
            var isSecond = first is not null;
            first ??= box.Centre;
            if (!isSecond && line.Count * Step >= LongLine
                && Best(sheet, line, halfWidth, halfHeight, others, isOnCloth, null, first, Apart) is { } second)
            {
                sheet.Put(new PlacedLabel(text, second));
            }
        }

        return first;
    }

    private static LabelBox? Best(
        LabelSheet sheet,
        List<SKPoint> line,
        float halfWidth,
        float halfHeight,
        IReadOnlyList<SKPoint> others,
        Func<SKPoint, bool> isOnCloth,
        SKPoint? near,
        SKPoint? sibling,
        float apart)
    {
        var isClosed = line.Count > 3 && SKPoint.Distance(line[0], line[^1]) < 1.5f * Step;
        var half = (int)MathF.Ceiling((halfWidth + (isClosed ? 0 : EndGap)) / Step);
        var span = (int)MathF.Ceiling(halfWidth / Step);
        (float Cost, LabelBox Box)? best = null;
        for (var i = half; i + half < line.Count; i++)
        {
            var box = Along(line[i - span], line[i], line[i + span], halfWidth, halfHeight);
            var bend = Bend(line, i - span, i + span);
            if (bend > 5 || (sibling is { } other && SKPoint.Distance(other, line[i]) < apart))
            {
                continue;
            }

            var cost = bend * 12 + (near is { } wish ? SKPoint.Distance(wish, box.Centre) * 0.6f : 0) + Math.Abs(i - line.Count / 2) * 0.05f;
            if ((best is null || cost < best.Value.Cost) && sheet.IsFree(box) && IsClear(box.Grow(2), others) && box.Grow(3).Corners().All(isOnCloth))
            {
                best = (cost, box);
            }
        }

        return best?.Box;
    }

    private static bool IsClear(LabelBox box, IReadOnlyList<SKPoint> others)
    {
        for (var i = 0; i < others.Count; i++)
        {
            if (box.Contains(others[i]))
            {
                return false;
            }
        }

        return true;
    }

    private static LabelBox Along(SKPoint from, SKPoint middle, SKPoint to, float halfWidth, float halfHeight)
    {
        var angle = MathF.Atan2(to.Y - from.Y, to.X - from.X);
        // Never upside down: a text on a steep line reads from below upwards.
        if (angle > MathF.PI / 2 - 0.02f)
        {
            angle -= MathF.PI;
        }
        else if (angle <= -MathF.PI / 2 - 0.02f)
        {
            angle += MathF.PI;
        }

        return new LabelBox(middle, halfWidth, halfHeight, angle);
    }

    private static float Bend(List<SKPoint> line, int from, int to)
    {
        var (a, chord) = (line[from], line[to] - line[from]);
        var length = Math.Max(chord.Length, 1e-3f);
        var worst = 0f;
        for (var i = from + 1; i < to; i++)
        {
            var offset = line[i] - a;
            worst = Math.Max(worst, Math.Abs(chord.X * offset.Y - chord.Y * offset.X) / length);
        }

        return worst;
    }

    private static List<SKPoint> Resample(IReadOnlyList<SKPoint> line)
    {
        var even = new List<SKPoint> { line[0] };
        var left = Step;
        for (var i = 0; i + 1 < line.Count; i++)
        {
            var (from, chord) = (line[i], line[i + 1] - line[i]);
            var length = chord.Length;
            while (length > 0 && left <= length)
            {
                even.Add(new SKPoint(from.X + chord.X * left / length, from.Y + chord.Y * left / length));
                left += Step;
            }

            left -= length;
        }

        return even;
    }
}
