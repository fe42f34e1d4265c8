using InfusionSim.Plots.Keys;
using InfusionSim.Plots.Panels;
using InfusionSim.Plots.Styling;
using InfusionSim.Protocol.V1;
using InfusionSim.Protocol.Words;
using SkiaSharp;

namespace InfusionSim.Plots;

/// <summary>A strip of moments side by side: the fill as a row of stills; on the bag side where there are layers.</summary>
public static class Strip
{
    private const float Gap = 18;
    private const float CaptionRoom = 30;
    private const float MostCellHeight = 330;

    // Stills are too small for them.
    private static readonly KeySign[] LeftOut = [KeySign.TimingMark, KeySign.HoseJoint, KeySign.Fibres];

    /// <summary>Draws the moments, three or four to a row.</summary>
    /// <param name="plan">The plan that was asked about.</param>
    /// <param name="response">Its answer, with the front map.</param>
    /// <param name="moments">The moments to show, in order of time; at least one.</param>
    /// <exception cref="ArgumentException">When there is no front map or no moment.</exception>
    public static Picture Draw(InfusionPlan plan, PredictFillResponse response, IReadOnlyList<FillMoment> moments)
    {
        var answer = PanelAnswer.Of(plan, response);
        Require.Moments(moments);
        var sentence = answer.Sentence;
        var (left, width) = (Theme.Margin, Theme.PictureWidth - 2 * Theme.Margin);
        var top = Header.Height(sentence, width);
        var columns = Columns(moments.Count);
        var cellWidth = (width - (columns - 1) * Gap) / columns;
        var cellHeight = PanelView.HeightFor(answer.Cloth, cellWidth, 6, MostCellHeight) + CaptionRoom;
        var rows = (moments.Count + columns - 1) / columns;
        var cells = moments.Select((moment, i) => (Moment: moment, Cell: SKRect.Create(
            left + i % columns * (cellWidth + Gap), top + i / columns * (cellHeight + 6), cellWidth, cellHeight))).ToArray();
        var signs = PanelKey.Signs(answer.Plan, answer.Map.Around(SquareState.DrySpot).Count > 0, answer.Map.Around(SquareState.NeverReached).Count > 0, false)
            .Except(LeftOut).Concat([KeySign.Wet, KeySign.Dry]).ToArray();
        var key = new PictureKey(signs);
        var keyTop = top + rows * (cellHeight + 6) + 4;
        return new Picture(Theme.PictureWidth, key.PictureHeight(keyTop), $"{answer.Title}, {moments.Count} moments: {sentence}", canvas =>
        {
            Header.Draw(canvas, answer.Title, Badge.Of(answer.Plan, answer.Forecast), sentence, left, width);
            foreach (var (moment, cell) in cells)
            {
                Still(canvas, answer, moment, cell);
            }

            key.Draw(canvas, keyTop);
        });
    }

    private static int Columns(int count) => count <= 4 ? count : count % 4 != 0 && count % 3 == 0 ? 3 : 4;

    private static void Still(SKCanvas canvas, PanelAnswer answer, FillMoment moment, SKRect cell)
    {
        TextStyle.StrongLabel.Draw(canvas, Amounts.Time(moment.TimeS), cell.Left + 6, cell.Top + CaptionRoom - 13, Theme.Ink);
        TextStyle.Label.Draw(
            canvas, $"{Amounts.Percent(moment.FilledFraction)} wet", cell.Right - 6, cell.Top + CaptionRoom - 13, Theme.Quiet, SKTextAlign.Right);
        var body = new SKRect(cell.Left, cell.Top + CaptionRoom, cell.Right, cell.Bottom);
        new FillView(answer, PanelView.Fit(answer.Cloth, body, 6)).Draw(canvas, moment.TimeS, answer.IsEnd(moment), []);
    }
}
