using InfusionSim.Plots.Contours;
using InfusionSim.Plots.Tests.Samples;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Plots.Tests.Contours;

public class IsochroneTests
{
    [Theory]
    [InlineData(5)]
    [InlineData(7)]
    [InlineData(23)]
    public void Isochrone_Strip_LiesWhereTheFormulaPutsIt(double cellMm)
    {
        // t = T (x/L)², so x = L √(t/T); a straight fill at constant pressure.
        var plan = Drawing.Plan("Strip", Drawing.Box(0, 0, 600, 400));
        var response = Answers.From(plan, cellMm, (x, _) => 1800 * Math.Pow(x / 600, 2));

        foreach (var isochrone in Isochrones(plan, response))
        {
            Farthest(isochrone, spot => Math.Abs(spot.XMm - 600 * Math.Sqrt(isochrone.TimeS / 1800))).ShouldBeLessThan(cellMm / 4);
        }
    }

    [Fact]
    public void Isochrone_Disc_IsACircle()
    {
        var (plan, response) = SamplePanels.Disc();

        foreach (var isochrone in Isochrones(plan, response))
        {
            var radius = 300 * Math.Sqrt(isochrone.TimeS / 1200);
            Farthest(isochrone, spot => Math.Abs(Math.Sqrt(Math.Pow(spot.XMm - 300, 2) + Math.Pow(spot.YMm - 300, 2)) - radius)).ShouldBeLessThan(6.0 / 4);
        }
    }

    [Fact]
    public void Isochrone_PlateTurnedWithCutEdgeSquares_IsStraightUpToTheEdge()
    {
        var (plan, response) = SamplePanels.Turned();
        var (c, s) = (Math.Cos(17 * Math.PI / 180), Math.Sin(17 * Math.PI / 180));

        foreach (var isochrone in Isochrones(plan, response))
        {
            var along = 560 * Math.Sqrt(isochrone.TimeS / 3240);
            Farthest(isochrone, spot => Math.Abs(c * spot.XMm + s * spot.YMm - along)).ShouldBeLessThan(5.0 / 4);
            // Where no cut-out lies in its way it runs from edge to edge: 350 mm, less one look at each end.
            if (along is < 295 or > 425)
            {
                isochrone.Lines.Sum(Length).ShouldBeInRange(350 - 2 * 5.0, 350 + 5.0);
            }
        }
    }

    [Fact]
    public void Isochrone_AnyPanel_StaysOnTheCloth()
    {
        foreach (var (plan, response) in SamplePanels.All())
        {
            var cloth = new ClothArea(plan);
            Isochrones(plan, response).SelectMany(isochrone => isochrone.Lines).SelectMany(line => line).ShouldAllBe(spot => cloth.Contains(spot));
        }
    }

    [Fact]
    public void Isochrone_AnyPanel_HasOneForEachRoundTime()
    {
        foreach (var (plan, response) in SamplePanels.All())
        {
            Isochrones(plan, response).ShouldAllBe(isochrone => isochrone.Lines.Count > 0);
        }
    }

    private static Isochrone[] Isochrones(InfusionPlan plan, PredictFillResponse response)
    {
        var map = new ArrivalMap(response.FrontMap, new ClothArea(plan));
        return [.. RoundTimes.Before(response.Forecast.EndTimeS).Select(map.At)];
    }

    private static double Farthest(Isochrone isochrone, Func<Spot, double> distanceMm) => isochrone.Lines.SelectMany(line => line).Max(distanceMm);

    private static double Length(IReadOnlyList<Spot> line) =>
        line.Zip(line.Skip(1)).Sum(pair => Math.Sqrt(Math.Pow(pair.Second.XMm - pair.First.XMm, 2) + Math.Pow(pair.Second.YMm - pair.First.YMm, 2)));
}
