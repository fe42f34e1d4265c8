using InfusionSim.Plots.Charts;
using InfusionSim.Plots.Tests.Samples;

namespace InfusionSim.Plots.Tests.Charts;

public class LineCurveTests
{
    [Fact]
    public void Of_FeedWithAHoseOnItsWay_CountsFromWhereTheHoseJoins()
    {
        var (plan, response) = SamplePanels.LayUp();

        var feed = LineCurve.Of(plan, response.Forecast).Single(curve => !curve.IsVent);

        // 0.96 at the joint 100 mm up, 0.001/mm less away from it: 0.86 at the lower end, 0.66 at the upper.
        feed.StartMm.ShouldBe(100, 1e-9);
        feed.StartShare.ShouldBe(0.96, 1e-9);
        feed.EndShare.ShouldBe(0.66 / 0.96, 1e-9);
        feed.Shares[0].ShouldBe(0.86 / 0.96, 1e-9);
        feed.DistancesMm[feed.FarEnd].ShouldBe(400, 1e-9);
    }

    [Fact]
    public void Of_Vent_TellsItsVacuum()
    {
        var (plan, response) = SamplePanels.LayUp();

        var vent = LineCurve.Of(plan, response.Forecast).Single(curve => curve.IsVent);

        vent.StartShare.ShouldBe(1, 1e-9);
        vent.EndShare.ShouldBe(0.96, 1e-9);
    }

    [Fact]
    public void Draw_NoLineWithABore_SaysWhatToGive()
    {
        var (plan, response) = SamplePanels.Strip();

        Should.Throw<ArgumentException>(() => LinePressure.Draw(plan, response)).Message.ShouldContain("boreMm");
    }

    [Fact]
    public void Draw_LayUp_NamesEachLineAtItsFarEndAndTheMark()
    {
        var (plan, response) = SamplePanels.LayUp();

        var labels = LinePressure.Prepare(plan, response).Chart.Sheet.Labels;

        labels.Select(label => label.Text).ShouldBe(
            ["feed F1: 69 % left at its far end", "vent V1: 96 % left at its far end", "95 %: a feed that ends below it is weak there"], ignoreOrder: true);
        for (var i = 0; i < labels.Count; i++)
        {
            labels.Skip(i + 1).ShouldAllBe(other => !other.Box.Overlaps(labels[i].Box));
        }

        LinePressure.Draw(plan, response).Sentence.ShouldContain("feed F1 keeps 69 % of its pressure to its far end and starts with 96 % of the full pressure behind its hose");
    }
}
