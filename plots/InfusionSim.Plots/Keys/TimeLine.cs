using InfusionSim.Plots.Styling;
using InfusionSim.Protocol.V1;
using InfusionSim.Protocol.Words;
using SkiaSharp;

namespace InfusionSim.Plots.Keys;

/// <summary>A bar that runs from the opening of the feed to the end of the fill.</summary>
/// <param name="forecast">The forecast.</param>
internal sealed class TimeLine(FillForecast forecast)
{
    /// <summary>Height of the bar with its texts [px].</summary>
    internal const float Height = 54;

    /// <summary>Draws the bar at a time.</summary>
    internal void Draw(SKCanvas canvas, double timeS, float left, float top, float width)
    {
        var share = (float)Math.Clamp(timeS / forecast.EndTimeS, 0, 1);
        using var whole = Theme.Fill(Theme.BareCloth);
        using var done = Theme.Fill(Theme.Resin);
        using var border = Theme.Stroke(Theme.Ink, 1.4f);
        canvas.DrawRect(left, top, width, 10, whole);
        canvas.DrawRect(left, top, width * share, 10, done);
        canvas.DrawRect(left, top, width, 10, border);
        var end = forecast.Outcome switch { Outcome.Fills => "full", Outcome.GelsFirst => "gel", _ => "at rest" };
        TextStyle.Axis.Draw(canvas, "feed opens", left, top + 23, Theme.Quiet);
        TextStyle.Axis.Draw(canvas, $"{end} {Amounts.Time(forecast.EndTimeS)}", left + width, top + 23, Theme.Quiet, SKTextAlign.Right);
    }
}
