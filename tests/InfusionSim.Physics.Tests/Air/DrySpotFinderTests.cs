using InfusionSim.Physics.Air;
using InfusionSim.Physics.Clock;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Panels;
using InfusionSim.Physics.Tests.Flow;

namespace InfusionSim.Physics.Tests.Air;

public class DrySpotFinderTests
{
    [Theory]
    [InlineData(2000)]
    [InlineData(10000)]
    public void Find_NoVent_LeavesTheShareOfTheBagPressure(double bagPressure)
    {
        Panel panel = TestPanels.Strip(0.5, 0.02, 0.005, TestPanels.Cloth);
        DrySpot spot = DrySpotFinder.Find(FillMap.Compute(FillProblemBuilder.Build(panel)), new Bag(bagPressure, 100000)).ShouldHaveSingleItem();

        // Boyle's law: the gas of the whole cloth at the bag's pressure, under the pressure of the shop.
        double share = bagPressure / 100000;
        spot.GasVolume.ShouldBe(share * 0.5 * 0.02 * 0.003 * 0.5, 1e-12);
        spot.Area.ShouldBe(share * 0.5 * 0.02, 1e-9);
        spot.At.X.ShouldBe(0.5 * (1 - share / 2), 0.005);
    }

    [Fact]
    public void Find_TwoPockets_NamesTheLargerFirst()
    {
        Panel panel = new(
            new(TestPanels.Rectangle(0, 0, 0.6, 0.1), []),
            [TestPanels.Cloth],
            [TestPanels.Feed(TestPanels.Path((0.25, 0), (0.25, 0.1)))],
            [TestPanels.Vent(TestPanels.Path((0.2125, 0), (0.2125, 0.1)), VentKind.Membrane), TestPanels.Vent(TestPanels.Path((0.2875, 0), (0.2875, 0.1)), VentKind.Membrane)],
            [],
            0.005);
        IReadOnlyList<DrySpot> spots = DrySpotFinder.Find(FillMap.Compute(FillProblemBuilder.Build(panel)), new Bag(2000, 100000));
        spots.Count.ShouldBe(2);
        spots[0].At.X.ShouldBeGreaterThan(0.5);
        spots[1].At.X.ShouldBeLessThan(0.1);
        spots[0].Area.ShouldBeGreaterThan(spots[1].Area);
    }
}
