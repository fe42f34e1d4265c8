using InfusionSim.Plots.Styling;
using SkiaSharp;

namespace InfusionSim.Plots.Panels;

/// <summary>A panel at one moment: wet cloth solid, dry cloth pale, the front a strong line.</summary>
/// <param name="answer">The plan and its answer.</param>
/// <param name="view">Where the panel lies.</param>
internal sealed class FillView(PanelAnswer answer, PanelView view)
{
    private const float MeshBand = 5;

    private const float LineWidth = 4.5f;

    /// <summary>Draws the panel at a time.</summary>
    /// <param name="canvas">What to draw on.</param>
    /// <param name="timeS">The time [s].</param>
    /// <param name="atEnd">Whether the fill is over, so that what is dry stays dry.</param>
    /// <param name="earlierS">Earlier times whose fronts are drawn thinly [s].</param>
    internal void Draw(SKCanvas canvas, double timeS, bool atEnd, IReadOnlyList<double> earlierS)
    {
        using var outline = view.ToPath(answer.Cloth.Rings);
        using var wet = Theme.Fill(Theme.Resin);
        using var thin = Theme.Stroke(Theme.Paper.WithAlpha(170), 1.1f);
        canvas.Save();
        canvas.ClipPath(outline, SKClipOperation.Intersect, true);
        canvas.DrawPath(outline, wet);
        FrontPainter.Lines(canvas, view, earlierS.SelectMany(earlier => answer.Map.At(earlier).Lines), thin);
        FrontPainter.DryAt(canvas, view, answer.Map, timeS, atEnd);
        canvas.Restore();
        LayUpSigns.Draw(canvas, answer.Plan, view, outline, MeshBand);
        PanelPainter.Outline(canvas, outline, 1.6f);
        PanelPainter.Lines(canvas, answer.Plan, view, LineWidth, withMarks: false, withHoses: false);
    }
}
