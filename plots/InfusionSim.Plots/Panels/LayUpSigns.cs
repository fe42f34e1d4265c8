using InfusionSim.Plots.Contours;
using InfusionSim.Plots.Styling;
using InfusionSim.Protocol.V1;
using SkiaSharp;

namespace InfusionSim.Plots.Panels;

/// <summary>Signs of what lies on and in the cloth: meshes and cores by their borders, gaps by their path; none of them fills an area that carries numbers.</summary>
internal static class LayUpSigns
{
    /// <summary>Width a gap is drawn with [px].</summary>
    internal const float GapWidth = 7.4f;

    private const float NetPitch = 5;
    private const float BeadPitch = 9;

    /// <summary>Draws meshes, cores and gaps.</summary>
    /// <param name="canvas">What to draw on.</param>
    /// <param name="plan">The plan.</param>
    /// <param name="view">Where the panel lies.</param>
    /// <param name="cloth">The cloth on the picture.</param>
    /// <param name="band">Width of a mesh's border [px].</param>
    internal static void Draw(SKCanvas canvas, InfusionPlan plan, PanelView view, SKPath cloth, float band = 8)
    {
        foreach (var core in plan.Cores)
        {
            using var area = AreaOf(core.Area, view, cloth);
            Core(canvas, area);
        }

        foreach (var mesh in plan.FlowMeshes)
        {
            using var area = AreaOf(mesh.Area, view, cloth);
            Mesh(canvas, area, mesh.Face == PanelFace.ToolSide, band);
        }

        foreach (var gap in plan.Gaps)
        {
            Gap(canvas, LineSigns.Line(gap.Path, view));
        }
    }

    /// <summary>A flow mesh: a band of netting inside its border; a broken border on the tool side.</summary>
    internal static void Mesh(SKCanvas canvas, SKPath area, bool isOnToolSide, float band = 8)
    {
        canvas.Save();
        canvas.ClipPath(area, SKClipOperation.Intersect, true);
        using var ground = Theme.Stroke(Theme.Paper.WithAlpha(170), 2 * band);
        canvas.DrawPath(area, ground);
        canvas.Restore();
        canvas.Save();
        using var rim = Theme.Stroke(Theme.Ink, 2 * band);
        using var ribbon = rim.GetFillPath(area) ?? new SKPath();
        canvas.ClipPath(area, SKClipOperation.Intersect, true);
        canvas.ClipPath(ribbon, SKClipOperation.Intersect, true);
        Net(canvas, area.Bounds);
        canvas.Restore();
        using var border = isOnToolSide ? Theme.Stroke(Theme.Ink, 1.6f, 7, 4) : Theme.Stroke(Theme.Ink, 1.6f);
        canvas.DrawPath(area, border);
    }

    /// <summary>A core: a double border.</summary>
    internal static void Core(SKCanvas canvas, SKPath area)
    {
        canvas.Save();
        canvas.ClipPath(area, SKClipOperation.Intersect, true);
        using var wide = Theme.Stroke(Theme.Ink, 11);
        using var between = Theme.Stroke(Theme.Paper, 8);
        canvas.DrawPath(area, wide);
        canvas.DrawPath(area, between);
        canvas.Restore();
        using var border = Theme.Stroke(Theme.Ink, 1.6f);
        canvas.DrawPath(area, border);
    }

    /// <summary>A gap: a string of beads along its path.</summary>
    internal static void Gap(SKCanvas canvas, IReadOnlyList<SKPoint> line)
    {
        using var builder = new SKPathBuilder();
        foreach (var bead in Beads(line))
        {
            builder.MoveTo(bead);
            builder.LineTo(bead.X + 0.01f, bead.Y);
        }

        using var beads = builder.Detach();
        using var casing = Theme.Stroke(Theme.Ink, GapWidth);
        using var body = Theme.Stroke(Theme.Paper, GapWidth - 3);
        canvas.DrawPath(beads, casing);
        canvas.DrawPath(beads, body);
    }

    /// <summary>Where a hose joins its line: a white lozenge.</summary>
    internal static void HoseJoint(SKCanvas canvas, SKPoint at)
    {
        using var builder = new SKPathBuilder();
        builder.AddPoly([new(at.X, at.Y - 9), new(at.X + 9, at.Y), new(at.X, at.Y + 9), new(at.X - 9, at.Y)], true);
        using var lozenge = builder.Detach();
        using var casing = Theme.Stroke(Theme.Paper, 6);
        using var fill = Theme.Fill(Theme.Paper);
        using var border = Theme.Stroke(Theme.Ink, 2.2f);
        canvas.DrawPath(lozenge, casing);
        canvas.DrawPath(lozenge, fill);
        canvas.DrawPath(lozenge, border);
    }

    /// <summary>Where the hoses of feeds and vents join their lines [px].</summary>
    internal static IEnumerable<SKPoint> HoseJoints(InfusionPlan plan, PanelView view) =>
        plan.Feeds.Select(feed => (feed.Hose, feed.Path)).Concat(plan.Vents.Select(vent => (vent.Hose, vent.Path)))
            .Where(line => line.Hose is not null)
            .Select(line => view.ToPixel(ClothArea.Read(line.Hose.JoinsAt ?? line.Path.Points[0])));

    private static SKPath AreaOf(Ring? ring, PanelView view, SKPath cloth)
    {
        if (ring is not { Points.Count: > 2 })
        {
            return new SKPath(cloth);
        }

        using var area = view.ToPath([ring.Points.Select(ClothArea.Read)]);
        return area.Op(cloth, SKPathOp.Intersect) ?? new SKPath(cloth);
    }

    private static void Net(SKCanvas canvas, SKRect box)
    {
        using var builder = new SKPathBuilder();
        var pitch = NetPitch * MathF.Sqrt(2);
        for (var x = MathF.Floor((box.Left - box.Height) / pitch) * pitch; x < box.Right + box.Height; x += pitch)
        {
            builder.MoveTo(x, box.Top);
            builder.LineTo(x + box.Height, box.Bottom);
            builder.MoveTo(x, box.Bottom);
            builder.LineTo(x + box.Height, box.Top);
        }

        using var net = builder.Detach();
        using var strand = Theme.Stroke(Theme.Ink, 0.8f);
        canvas.DrawPath(net, strand);
    }

    private static List<SKPoint> Beads(IReadOnlyList<SKPoint> line)
    {
        var beads = new List<SKPoint>();
        for (var i = 0; i + 1 < line.Count; i++)
        {
            var chord = line[i + 1] - line[i];
            var count = Math.Max(1, (int)MathF.Round(chord.Length / BeadPitch));
            for (var step = i == 0 ? 0 : 1; step <= count; step++)
            {
                beads.Add(new SKPoint(line[i].X + chord.X * step / count, line[i].Y + chord.Y * step / count));
            }
        }

        return beads;
    }
}
