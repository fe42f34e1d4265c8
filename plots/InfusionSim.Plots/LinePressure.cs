using InfusionSim.Plots.Charts;
using InfusionSim.Plots.Keys;
using InfusionSim.Plots.Styling;
using InfusionSim.Protocol.V1;
using InfusionSim.Protocol.Words;
using SkiaSharp;

namespace InfusionSim.Plots;

/// <summary>The picture of the pressure along each feed line and of the vacuum along each vent line when the fill ends.</summary>
public static class LinePressure
{
    private const float ChartHeight = 380;
    private const int MostTold = 3;

    /// <summary>Draws the lines.</summary>
    /// <param name="plan">The plan that was asked about.</param>
    /// <param name="response">Its answer.</param>
    /// <exception cref="ArgumentException">When there is no forecast, or no line with a bore or a hose.</exception>
    public static Picture Draw(InfusionPlan plan, PredictFillResponse response)
    {
        plan = Require.Plan(plan);
        var (chart, sentence, area) = Prepare(plan, response);
        var key = new PictureKey(PanelKey.Signs(plan, false, false, false).Where(sign => sign is KeySign.Feed or KeySign.Vent or KeySign.HoseJoint).ToArray());
        var keyTop = area.Bottom + ChartAxes.BottomRoom + 4;
        var title = $"{plan.Title}: pressure along the lines";
        return new Picture(Theme.PictureWidth, key.PictureHeight(keyTop), $"{title}. {sentence}", canvas =>
        {
            Header.Draw(canvas, title, null, sentence, Theme.Margin, Theme.PictureWidth - 2 * Theme.Margin);
            chart.Draw(canvas);
            key.Draw(canvas, keyTop);
        });
    }

    /// <summary>The chart of the picture, with its labels placed.</summary>
    internal static (LineChart Chart, string Sentence, SKRect Area) Prepare(InfusionPlan plan, PredictFillResponse response)
    {
        Require.Forecast(response);
        var curves = LineCurve.Of(plan, response.Forecast);
        Require.Lines(curves.Count);
        var sentence = Sentence(curves);
        var (left, width) = (Theme.Margin, Theme.PictureWidth - 2 * Theme.Margin);
        var area = SKRect.Create(left + ChartAxes.LeftRoom, Header.Height(sentence, width) + 6, width - ChartAxes.LeftRoom - 6, ChartHeight);
        return (new LineChart(curves, area), sentence, area);
    }

    private static string Sentence(IReadOnlyList<LineCurve> curves)
    {
        var told = curves.OrderBy(curve => curve.EndShare).Take(MostTold).Select(Text);
        var more = curves.Count > MostTold ? $"; and {curves.Count - MostTold} more" : "";
        return $"When the fill ends: {string.Join("; ", told)}{more}.";
    }

    private static string Text(LineCurve curve)
    {
        var what = curve.IsVent ? "vacuum" : "pressure";
        var hose = curve.HasHose ? $" and starts with {Amounts.Percent(curve.StartShare)} of the full {what} behind its hose" : "";
        return $"{curve.Text} keeps {Amounts.Percent(curve.EndShare)} of its {what} to its far end{hose}";
    }
}
