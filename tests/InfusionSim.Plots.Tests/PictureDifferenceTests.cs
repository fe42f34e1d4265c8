using InfusionSim.Plots.Tests.Samples;

namespace InfusionSim.Plots.Tests;

public class PictureDifferenceTests
{
    [Fact]
    public void Find_SamePanel_SeesNothing()
    {
        var (plan, response) = SamplePanels.HoleAndDrySpot();

        PictureDifference.Find(Front.Draw(plan, response).PngBytes(), Front.Draw(plan, response).PngBytes()).ShouldBeNull();
    }

    [Fact]
    public void Find_DrySpotGone_SeesIt()
    {
        var (plan, response) = SamplePanels.HoleAndDrySpot();
        var before = Front.Draw(plan, response).PngBytes();
        response.Forecast.DrySpots.Clear();

        PictureDifference.Find(before, Front.Draw(plan, response).PngBytes()).ShouldNotBeNull().ShouldStartWith("looks different");
    }

    [Fact]
    public void Find_OtherSize_NamesBoth()
    {
        var (plan, response) = SamplePanels.Strip();
        var picture = Front.Draw(plan, response);

        PictureDifference.Find(picture.PngBytes(), picture.PngBytes(2)).ShouldBe($"is 900 × {picture.Height} px, drawn anew 1800 × {2 * picture.Height} px");
    }

    [Fact]
    public void Find_FeedMoved_SeesIt()
    {
        var (plan, response) = SamplePanels.Strip();
        var before = Front.Draw(plan, response).PngBytes();
        plan.Feeds[0].Path.Points[0].XMm = 60;

        PictureDifference.Find(before, Front.Draw(plan, response).PngBytes()).ShouldNotBeNull().ShouldStartWith("looks different");
    }
}
