using InfusionSim.Plots.Contours;
using InfusionSim.Plots.Fronts;
using InfusionSim.Plots.Keys;
using InfusionSim.Plots.Panels;
using InfusionSim.Plots.Styling;
using InfusionSim.Plots.Words;
using InfusionSim.Protocol.V1;
using InfusionSim.Protocol.Words;
using SkiaSharp;

namespace InfusionSim.Plots;

/// <summary>The fronts of two or more plans side by side, on one scale of times.</summary>
public static class Comparison
{
    private const float Gap = 24;
    private const float TitleRoom = 26;
    private const float LineRoom = 18;
    private const float LabelBorder = 34;
    private const float MostCellHeight = 460;

    /// <summary>Draws the fronts side by side.</summary>
    /// <param name="answers">Two or more plans with their answers and front maps, in the order to show them.</param>
    /// <exception cref="ArgumentException">When there are fewer than two, or one has no front map.</exception>
    public static Picture Draw(IReadOnlyList<(InfusionPlan Plan, PredictFillResponse Response)> answers)
    {
        if (answers.Count < 2)
        {
            throw new ArgumentException($"There is nothing to compare: {answers.Count} plan given; give two or more.", nameof(answers));
        }

        answers = [.. answers.Select(answer => (Require.Plan(answer.Plan), answer.Response))];
        foreach (var (_, response) in answers)
        {
            Require.FrontMap(response);
        }

        var scale = new TimeScale(answers.Max(answer => answer.Response.Forecast.EndTimeS));
        var cloths = answers.Select(answer => new ClothArea(answer.Plan)).ToArray();
        var (left, width) = (Theme.Margin, Theme.PictureWidth - 2 * Theme.Margin);
        var columns = cloths.All(cloth => cloth.WidthMm > 2.2 * cloth.HeightMm) ? 1 : answers.Count % 2 == 0 ? 2 : Math.Min(3, answers.Count);
        var cellWidth = (width - (columns - 1) * Gap) / columns;
        var bodyHeight = cloths.Max(cloth => PanelView.HeightFor(cloth, cellWidth, LabelBorder, MostCellHeight));
        var headRoom = TitleRoom + 12 + Math.Max(Badge.Height, LineRoom * answers.Max(answer => Lines(answer.Plan, answer.Response.Forecast, cellWidth).Count));
        var cells = answers.Select((answer, i) => Prepare(
            answer.Plan, answer.Response, cloths[i], scale, headRoom,
            SKRect.Create(left + i % columns * (cellWidth + Gap), Theme.Margin - 4 + i / columns * (bodyHeight + headRoom + 4), cellWidth, bodyHeight + headRoom))).ToArray();
        var signs = cells.SelectMany(cell => PanelKey.Signs(cell.Plan, cell.Scene.DrySpots.Count > 0, cell.Scene.NeverReached.Count > 0, cell.Scene.Last is not null))
            .Distinct().Order().ToArray();
        var keyTop = cells.Max(cell => cell.Box.Bottom) + 14;
        var height = keyTop + ClassBar.Height + SignKey.Rows(signs, width) * SignKey.RowHeight + Theme.Margin - 6;
        var sentence = string.Join(" ", answers.Select(answer => $"{answer.Plan.Title}: {ForecastText.Sentence(answer.Plan, answer.Response)}"));
        return new Picture(Theme.PictureWidth, (int)MathF.Ceiling(height), sentence, canvas =>
        {
            foreach (var cell in cells)
            {
                cell.Draw(canvas);
            }

            ClassBar.Draw(
                canvas, new SKRect(left, keyTop, left + width, keyTop + ClassBar.Height), "Front arrives", scale.Colours, scale.Texts, "0", Amounts.Time(scale.EndS));
            SignKey.Draw(canvas, signs, left, keyTop + ClassBar.Height, width);
        });
    }

    private static IReadOnlyList<string> Lines(InfusionPlan plan, FillForecast forecast, float width) =>
        TextStyle.Label.Wrap(ForecastText.Short(plan, forecast), width - Badge.Of(plan, forecast).Width - 12);

    private static Cell Prepare(InfusionPlan plan, PredictFillResponse response, ClothArea cloth, TimeScale scale, float headRoom, SKRect box)
    {
        var view = PanelView.Fit(cloth, new SKRect(box.Left, box.Top + headRoom, box.Right, box.Bottom), LabelBorder);
        return new Cell(plan, response.Forecast, new FrontScene(plan, response, view, scale), box);
    }

    private sealed record Cell(InfusionPlan Plan, FillForecast Forecast, FrontScene Scene, SKRect Box)
    {
        internal void Draw(SKCanvas canvas)
        {
            var title = new TextStyle(18, true);
            title.Draw(canvas, Header.Shorten(Plan.Title, Box.Width, title), Box.Left, Box.Top + 14, Theme.Ink);
            var badge = Badge.Of(Plan, Forecast);
            var lines = Lines(Plan, Forecast, Box.Width);
            var middle = Box.Top + TitleRoom + 4 + Math.Max(Badge.Height, LineRoom * lines.Count) / 2;
            badge.Draw(canvas, Box.Left + badge.Width, middle);
            for (var i = 0; i < lines.Count; i++)
            {
                TextStyle.Label.Draw(canvas, lines[i], Box.Left + badge.Width + 10, middle + (i - (lines.Count - 1) / 2f) * LineRoom, Theme.Ink);
            }

            Scene.Draw(canvas);
        }
    }
}
