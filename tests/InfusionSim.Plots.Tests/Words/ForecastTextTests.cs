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
            "Straight strip: Fills in 30 min (two shots in three: 20 to 45 min); the resin gels at 54 min, 24 min to spare; last to fill is the bottom right corner.");
    }

    [Fact]
    public void Sentence_TrapsAir_NamesTheDryPlace()
    {
        var (plan, response) = SamplePanels.HoleAndDrySpot();

        Front.Draw(plan, response).Sentence.ShouldContain("Traps air: 72 cm² stay dry in the right part; full elsewhere in");
    }

    [Fact]
    public void Sentence_GelsFirst_NamesTheShareThatIsFull()
    {
        var (plan, response) = SamplePanels.Turned();

        Front.Draw(plan, response).Sentence.ShouldContain("Gels first: the resin gels at 54 min with the cloth 79 % full");
    }
}
