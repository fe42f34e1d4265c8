using InfusionSim.Plots.Styling;
using InfusionSim.Plots.Words;
using InfusionSim.Protocol.V1;
using SkiaSharp;

namespace InfusionSim.Plots.Keys;

/// <summary>The outcome in capitals: black on white when it fills, white on black when not.</summary>
/// <param name="Text">The outcome.</param>
/// <param name="IsGood">Whether it fills.</param>
internal sealed record Badge(string Text, bool IsGood)
{
    /// <summary>Height with a little room above and below [px].</summary>
    internal const float Height = 30;

    /// <summary>Width [px].</summary>
    internal float Width => TextStyle.StrongLabel.Measure(Text) + 24;

    /// <summary>The badge of a forecast.</summary>
    internal static Badge Of(InfusionPlan plan, FillForecast forecast) => new(ForecastText.Badge(plan, forecast), forecast.Outcome == Outcome.Fills);

    /// <summary>Draws the badge with its right end and its middle at a place.</summary>
    /// <returns>Its width [px].</returns>
    internal float Draw(SKCanvas canvas, float right, float y)
    {
        var box = new SKRect(right - Width, y - Height / 2 + 2, right, y + Height / 2 - 2);
        using var fill = Theme.Fill(IsGood ? Theme.Paper : Theme.Ink);
        using var border = Theme.Stroke(Theme.Ink, 2);
        Pill.Draw(canvas, box, 13, fill);
        Pill.Draw(canvas, box, 13, border);
        TextStyle.StrongLabel.Draw(canvas, Text, right - Width / 2, y, IsGood ? Theme.Ink : Theme.Paper, SKTextAlign.Center);
        return Width;
    }
}
