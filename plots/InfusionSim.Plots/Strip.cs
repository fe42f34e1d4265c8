using InfusionSim.Plots.Contours;
using InfusionSim.Plots.Keys;
using InfusionSim.Plots.Panels;
using InfusionSim.Plots.Styling;
using InfusionSim.Plots.Words;
using InfusionSim.Protocol.V1;
using InfusionSim.Protocol.Words;
using SkiaSharp;

namespace InfusionSim.Plots;

/// <summary>A strip of moments side by side: the fill as a row of stills.</summary>
public static class Strip
{
    private const float Gap = 18;
    private const float CaptionRoom = 30;
    private const float MostCellHeight = 330;

    /// <summary>Draws the moments, three or four to a row.</summary>
    /// <param name="plan">The plan that was asked about.</param>
    /// <param name="response">Its answer, with the front map.</param>
    /// <param name="moments">The moments to show, in order of time; at least one.</param>
    /// <exception cref="ArgumentException">When there is no front map or no moment.</exception>
    public static Picture Draw(InfusionPlan plan, PredictFillResponse response, IReadOnlyList<FillMoment> moments)
    {
        plan = Require.Plan(plan);
        Require.FrontMap(response);
        Require.Moments(moments);
        var cloth = new ClothArea(plan);
        var map = new ArrivalMap(response.FrontMap, cloth);
        var sentence = ForecastText.Sentence(plan, response);
        var (left, width) = (Theme.Margin, Theme.PictureWidth - 2 * Theme.Margin);
        var top = Header.Height(sentence, width);
        var columns = Columns(moments.Count);
        var cellWidth = (width - (columns - 1) * Gap) / columns;
        var cellHeight = PanelView.HeightFor(cloth, cellWidth, 6, MostCellHeight) + CaptionRoom;
        var rows = (moments.Count + columns - 1) / columns;
        var cells = moments.Select((moment, i) => (Moment: moment, Cell: SKRect.Create(
            left + i % columns * (cellWidth + Gap), top + i / columns * (cellHeight + 6), cellWidth, cellHeight))).ToArray();
        var signs = PanelKey.Signs(plan, map.Around(SquareState.DrySpot).Count > 0, map.Around(SquareState.NeverReached).Count > 0, false)
            .Where(sign => sign != KeySign.TimingMark).Concat([KeySign.Wet, KeySign.Dry]).ToArray();
        var keyTop = top + rows * (cellHeight + 6) + 4;
        var height = keyTop + SignKey.Rows(signs, width) * SignKey.RowHeight + Theme.Margin - 6;
        return new Picture(Theme.PictureWidth, (int)MathF.Ceiling(height), $"{plan.Title}, {moments.Count} moments: {sentence}", canvas =>
        {
            Header.Draw(canvas, plan.Title, Badge.Of(plan, response.Forecast), sentence, left, width);
            foreach (var (moment, cell) in cells)
            {
                var isEnd = moment.TimeS >= response.Forecast.EndTimeS * (1 - 1e-6);
                Still(canvas, new FillView(plan, cloth, map, PanelView.Fit(cloth, SKRect.Create(cell.Left, cell.Top + CaptionRoom, cellWidth, cellHeight - CaptionRoom), 6)), moment, cell, isEnd);
            }

            SignKey.Draw(canvas, signs, left, keyTop, width);
        });
    }

    private static int Columns(int count) => count <= 4 ? count : count % 4 != 0 && count % 3 == 0 ? 3 : 4;

    private static void Still(SKCanvas canvas, FillView view, FillMoment moment, SKRect cell, bool isEnd)
    {
        TextStyle.StrongLabel.Draw(canvas, Amounts.Time(moment.TimeS), cell.Left + 6, cell.Top + CaptionRoom - 13, Theme.Ink);
        TextStyle.Label.Draw(
            canvas, $"{Amounts.Percent(moment.FilledFraction)} wet", cell.Right - 6, cell.Top + CaptionRoom - 13, Theme.Quiet, SKTextAlign.Right);
        view.Draw(canvas, moment.TimeS, isEnd, []);
    }
}
