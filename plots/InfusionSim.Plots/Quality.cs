using InfusionSim.Plots.Contours;
using InfusionSim.Plots.Keys;
using InfusionSim.Plots.Panels;
using InfusionSim.Plots.Qualities;
using InfusionSim.Plots.Styling;
using InfusionSim.Protocol.Units;
using InfusionSim.Protocol.V1;
using InfusionSim.Protocol.Words;

namespace InfusionSim.Plots;

/// <summary>The pictures of the quality numbers: how fast the front runs, its capillary number, what is left until gel; on the tool side where there are layers.</summary>
public static class Quality
{
    private const string SeenThrough = " In the lowest layer of laminate, seen through the panel from the bag side: left stays left.";

    /// <summary>Draws how fast the front runs when it comes to each place.</summary>
    /// <param name="plan">The plan that was asked about.</param>
    /// <param name="response">Its answer, with the front map and its quality numbers.</param>
    /// <exception cref="ArgumentException">When the answer has no such numbers.</exception>
    public static Picture DrawSpeed(InfusionPlan plan, PredictFillResponse response)
    {
        var answer = AnswerOf(plan, response);
        var said = answer.Forecast.Quality is { HasFrontSpeedFromMmPerMin: true } quality
            ? $"In nine tenths of the cloth the front runs at {QualityWords.SpeedRange(quality)} when it comes there." : "The front comes nowhere.";
        var field = OverPowersOfTen(response.FrontMap.FrontSpeedMmPerMin, level => $"{Numbers.Say(level)} mm/min", SpeedColours.Of);
        return Draw(answer, "speed of the front", said, field, "Speed, mm/min", level => Numbers.Say(level));
    }

    /// <summary>Draws the capillary number of the front when it comes to each place, with the ends of the published range as strong lines.</summary>
    /// <param name="plan">The plan that was asked about.</param>
    /// <param name="response">Its answer, with the front map and its quality numbers.</param>
    /// <exception cref="ArgumentException">When the answer has no such numbers.</exception>
    public static Picture DrawCapillaryNumber(InfusionPlan plan, PredictFillResponse response)
    {
        var answer = AnswerOf(plan, response);
        var quality = answer.Forecast.Quality;
        if (quality is not { HasPublishedFromRatio: true } || response.FrontMap.CapillaryNumberRatio.Count == 0)
        {
            throw new ArgumentException("The answer has no capillary number; give resin.surfaceTensionMnPerM.", nameof(response));
        }

        var said = $"In nine tenths of the cloth the capillary number is {QualityWords.NumberRange(quality)}; {Amounts.Percent(quality.BelowPublishedFraction)} of the cloth lies below and "
            + $"{Amounts.Percent(quality.AbovePublishedFraction)} above the range published as best, {Numbers.Say(quality.PublishedFromRatio)} to {Numbers.Say(quality.PublishedToRatio)}. "
            + "That range is doubtful: shown, not judged.";
        var field = OverPowersOfTen(
            response.FrontMap.CapillaryNumberRatio, Numbers.Say, CapillaryColours.Of, quality.PublishedFromRatio, quality.PublishedToRatio);
        return Draw(answer, "capillary number of the front", said, field, field.Levels.Any(field.Strong.Contains) ? "Capillary number (thick: published range)" : "Capillary number", Numbers.Say);
    }

    /// <summary>Draws what is left of the resin's flow up to gel when the front comes to each place.</summary>
    /// <param name="plan">The plan that was asked about.</param>
    /// <param name="response">Its answer, with the front map and its quality numbers.</param>
    /// <exception cref="ArgumentException">When the answer has no such numbers.</exception>
    public static Picture DrawGelMargin(InfusionPlan plan, PredictFillResponse response)
    {
        var answer = AnswerOf(plan, response);
        var field = new QualityField(
            [.. response.FrontMap.GelMarginFraction.Select((left, i) => answer.Front.Squares[i] == (byte)SquareState.Wets ? left : double.NaN)],
            [], false, Percent, GelMarginColours.Of);
        if (answer.Forecast.Quality is not { SmallestGelMarginAt: { } at } quality)
        {
            return Draw(answer, "what is left until gel", "The front comes nowhere.", field, "Left", Percent);
        }

        var least = Percent(quality.SmallestGelMarginFraction);
        var place = PlaceWords.Of(at, answer.Plan);
        var said = answer.Forecast.Outcome == Outcome.GelsFirst
            ? $"The resin gels before it comes everywhere: {place} it has {least} of its flow left; hatched cloth is not reached."
            : $"Where the front comes last, {place}, {least} of the flow that the resin has up to gel is left.";
        field = field with
        {
            Levels = Shares(quality.SmallestGelMarginFraction + 0.02, field.Values.Where(double.IsFinite).Max() - 0.02),
            Mark = (ClothArea.Read(at), $"least, {least} left"),
        };
        return Draw(answer, "what is left until gel", said, field, "Flow left until gel", Percent);
    }

    // Tenths, and twentieths where there would be fewer than two of them.
    private static double[] Shares(double least, double most)
    {
        double[] tenths = Every(10);
        return tenths.Length >= 2 ? tenths : Every(20);

        double[] Every(int parts) => [.. Enumerable.Range(1, parts - 1).Select(part => (double)part / parts).Where(share => share > least && share < most)];
    }

    private static Picture Draw(PanelAnswer answer, string what, string said, QualityField field, string heading, Func<double, string> border)
    {
        var page = PanelPage.For(answer.Cloth, said + (answer.HasSides ? SeenThrough : ""));
        var scene = new QualityScene(answer, field, page.View);
        var signs = PanelKey.Signs(answer.Plan, scene.HasDrySpots, scene.HasNeverReached, field.Mark is not null).Where(sign => sign != KeySign.TimingMark).ToArray();
        var known = field.Values.Where(double.IsFinite).ToArray();
        var scale = field.Levels.Length == 0 ? null
            : new ClassScale(heading, field.Colours, [.. field.Levels.Select(border)], border(Rounded(known.Min())), border(Rounded(known.Max())));
        return page.Finish($"{answer.Title}: {what}", null, scene.Draw, new PictureKey(signs, scale));
    }

    private static PanelAnswer AnswerOf(InfusionPlan plan, PredictFillResponse response)
    {
        Require.FrontMap(response);
        Require.Quality(response);
        return PanelAnswer.Of(plan, response, response.FrontMap.ToolSide is null ? PanelFace.BagSide : PanelFace.ToolSide);
    }

    private static QualityField OverPowersOfTen(IEnumerable<float> squares, Func<double, string> text, Func<int, int, SkiaSharp.SKColor> colour, params double[] strong)
    {
        double[] values = [.. squares.Select(value => value > 0 ? value : double.NaN)];
        var known = values.Where(double.IsFinite).Order().ToArray();

        // Lines for all but the last hundredth on either side: single squares beside a feed or an edge would only crowd the picture. What is asked for is drawn all the same.
        var levels = known.Length == 0 ? [] : RoundNumbers.Between(known[known.Length / 100], known[^(1 + known.Length / 100)]);
        var shown = known.Length == 0 ? [] : strong.Where(level => level > known[0] * 1.02 && level < known[^1] * 0.98);
        return new QualityField(values, [.. levels.Union(shown).Order()], true, text, colour) { Strong = strong };
    }

    private static double Rounded(double value) => Numbers.Rounded(value, 2);

    private static string Percent(double share) => $"{Math.Round(100 * share):0} %";
}
