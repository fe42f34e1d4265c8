using InfusionSim.Plots.Charts;
using InfusionSim.Plots.Keys;
using InfusionSim.Plots.Styling;
using InfusionSim.Protocol.V1;
using SkiaSharp;

namespace InfusionSim.Plots;

/// <summary>The picture of several resins on one plan: wet share, viscosity and drive against time, each with its gel.</summary>
public static class ResinCurves
{
    private const float ProgressHeight = 380;
    private const float SideHeight = 220;
    private const float SideGap = 22;

    /// <summary>Draws the comparison.</summary>
    /// <param name="plan">The plan that was asked about.</param>
    /// <param name="response">The answer, with a curve for each resin.</param>
    /// <exception cref="ArgumentException">When there is no resin, or one has no curve.</exception>
    public static Picture Draw(InfusionPlan plan, CompareResinsResponse response)
    {
        plan = Require.Plan(plan);
        Require.Resins(response);
        var lines = ResinLine.Of(response);
        int? best = response.HasBestIndex ? response.BestIndex : null;
        var title = $"{plan.Title}: {(lines.Count == 1 ? "one resin" : $"{lines.Count} resins")}";
        var sentence = Sentence(response);
        var scale = ResinScale.Of(lines);
        var (left, width) = (Theme.Margin, Theme.PictureWidth - 2 * Theme.Margin);
        var area = SKRect.Create(left + ChartAxes.LeftRoom, Header.Height(sentence, width) + 6, width - ChartAxes.LeftRoom - 6, ProgressHeight);
        var progress = new ResinProgressChart(lines, scale, area);
        var (sideTop, half) = (area.Bottom + ChartAxes.BottomRoom + 34, (width - SideGap) / 2);
        var viscosity = ResinSideChart.Viscosity(lines, scale, SKRect.Create(area.Left, sideTop, half - ChartAxes.LeftRoom, SideHeight));
        var drive = ResinSideChart.Drive(lines, scale, SKRect.Create(area.Left + half + SideGap, sideTop, half - ChartAxes.LeftRoom - 6, SideHeight));
        var keyTop = sideTop + SideHeight + ChartAxes.BottomRoom + 8;
        var height = (int)MathF.Ceiling(keyTop + ResinKey.Height(lines.Count) + Theme.Margin - 6);
        return new Picture(Theme.PictureWidth, height, $"{title}. {sentence}", canvas =>
        {
            Header.Draw(canvas, title, null, sentence, left, width);
            progress.Draw(canvas);
            viscosity.Draw(canvas);
            drive.Draw(canvas);
            ResinKey.Draw(canvas, lines, best, left, keyTop, width);
        });
    }

    // The wording of the answer itself: its verdict, or how each resin ends.
    private static string Sentence(CompareResinsResponse response) =>
        response.Answer.FirstOrDefault(line => line.Label == "Best" || line.Label == "None") is { } verdict
            ? char.ToUpperInvariant(verdict.Text[0]) + verdict.Text[1..] + "."
            : string.Join("; ", ResinLine.Of(response).Select(line => $"{line.Name}: {line.Story}")) + ".";
}
