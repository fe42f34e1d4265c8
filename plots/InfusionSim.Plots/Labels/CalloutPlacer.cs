using InfusionSim.Plots.Styling;
using SkiaSharp;

namespace InfusionSim.Plots.Labels;

/// <summary>Puts a text near the place it speaks of, where it covers nothing.</summary>
internal static class CalloutPlacer
{
    private const int Directions = 24;

    /// <summary>Puts a text as near as it can to one of several places; leaves it out when there is no room.</summary>
    /// <param name="sheet">What is taken.</param>
    /// <param name="text">What to say.</param>
    /// <param name="anchors">Places it may point to, the best first [px].</param>
    /// <param name="gap">Least distance between the anchor and the text's box [px].</param>
    /// <param name="reach">Largest distance tried beyond the gap [px].</param>
    /// <param name="cost">Extra cost of a box, in pixels of distance; may be null.</param>
    /// <param name="strong">Whether it must be seen first.</param>
    /// <param name="leader">Whether a leader runs to the anchor.</param>
    /// <returns>Whether it was put down.</returns>
    internal static bool Put(
        LabelSheet sheet,
        string text,
        IReadOnlyList<SKPoint> anchors,
        float gap,
        float reach,
        Func<LabelBox, float>? cost = null,
        bool strong = false,
        bool leader = true)
    {
        var style = strong ? TextStyle.StrongLabel : TextStyle.Label;
        var halfWidth = style.Measure(text) / 2 + 6;
        var halfHeight = style.LineHeight / 2 + 1.5f;
        (float Cost, PlacedLabel Label)? best = null;
        for (var a = 0; a < anchors.Count; a++)
        {
            for (var distance = gap; distance <= gap + reach; distance += 6)
            {
                for (var direction = 0; direction < Directions; direction++)
                {
                    var box = Beside(anchors[a], distance, direction, halfWidth, halfHeight);
                    if (sheet.IsFree(box))
                    {
                        var total = distance + 4 * a + (cost?.Invoke(box) ?? 0);
                        if (best is null || total < best.Value.Cost - 1e-3f)
                        {
                            best = (total, new PlacedLabel(text, box, leader ? anchors[a] : null, strong));
                        }
                    }
                }
            }
        }

        if (best is not { } found)
        {
            return false;
        }

        if (found.Label.Anchor is { } anchor)
        {
            sheet.Block(LabelBox.Around(anchor, found.Label.Box.Centre, 3));
        }

        sheet.Put(found.Label);
        return true;
    }

    private static LabelBox Beside(SKPoint anchor, float distance, int direction, float halfWidth, float halfHeight)
    {
        var angle = direction * 2 * MathF.PI / Directions;
        var (x, y) = (MathF.Cos(angle), -MathF.Sin(angle));
        // Out to where the box's own border, not its middle, keeps the distance.
        var toBorder = Math.Min(
            Math.Abs(x) < 1e-4f ? float.MaxValue : halfWidth / Math.Abs(x),
            Math.Abs(y) < 1e-4f ? float.MaxValue : halfHeight / Math.Abs(y));
        return new LabelBox(new SKPoint(anchor.X + x * (distance + toBorder), anchor.Y + y * (distance + toBorder)), halfWidth, halfHeight);
    }
}
