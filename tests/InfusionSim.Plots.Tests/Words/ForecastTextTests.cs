using InfusionSim.Plots.Tests.Samples;

namespace InfusionSim.Plots.Tests.Words;

public class ForecastTextTests
{
    [Fact]
    public void Sentence_Fills_NamesTimeBandGelAndLastPlace()
    {
        var (plan, response) = SamplePanels.Strip();
        response.Forecast.FillTimeS = response.Forecast.EndTimeS = 1800;
        response.Forecast.SpareTimeS = 1440;
        response.Forecast.LastToFill = Drawing.At(597.5, 2.5);
        (response.Forecast.Likely.FillTimeFromS, response.Forecast.Likely.FillTimeToS) = (1200, 2700);

        Front.Draw(plan, response).Sentence.ShouldBe(
            "Straight strip: Full 30 min after opening (two shots in three: 20 to 45 min); gel at 54 min, 24 min to spare; last to fill: the right edge.");
    }

    [Fact]
    public void Sentence_TrapsAir_NamesTheDryPlace()
    {
        var (plan, response) = SamplePanels.HoleAndDrySpot();

        Front.Draw(plan, response).Sentence.ShouldContain("72 cm² stay dry: 1010 mm right, 250 mm up from the lower left");
    }

    [Fact]
    public void Sentence_GelsFirst_NamesTheShareThatIsFull()
    {
        var (plan, response) = SamplePanels.Turned();

        Front.Draw(plan, response).Sentence.ShouldContain("Solid 54 min after opening with 79 % of the cloth full");
    }
}
