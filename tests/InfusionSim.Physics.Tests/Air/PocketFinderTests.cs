using InfusionSim.Physics.Air;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Panels;
using InfusionSim.Physics.Tests.Flow;

namespace InfusionSim.Physics.Tests.Air;

public class PocketFinderTests
{
    [Fact]
    public void Find_VentAtTheFarEnd_FindsNoPocket()
    {
        FillMap map = MapOf(StripWith([TestPanels.Vent(TestPanels.Path((0.5, 0), (0.5, 0.02)))]));
        PocketFinder.Find(map).ShouldBeEmpty();
    }

    [Fact]
    public void Find_NoVent_SealsTheWholeClothFromTheStart()
    {
        FillMap map = MapOf(StripWith([]));
        Pocket pocket = PocketFinder.Find(map).ShouldHaveSingleItem();
        pocket.SealedClock.ShouldBe(0);
        pocket.Cells.Count.ShouldBe(map.Reached.Count(static reached => reached));
    }

    [Fact]
    public void Find_MembraneBeforeTheFarEnd_SealsWhatLiesBehindItWhenItIsWet()
    {
        Vent membrane = TestPanels.Vent(TestPanels.Path((0.2025, 0), (0.2025, 0.02)), VentKind.Membrane);
        FillMap map = MapOf(StripWith([membrane]));
        Pocket pocket = PocketFinder.Find(map).ShouldHaveSingleItem();

        // √t law of a front at the middle of the membrane's cell, from memory: any text on liquid moulding.
        double expected = 0.5 * 0.2025 * 0.2025 / (2 * 1e-10);
        (pocket.SealedClock / expected).ShouldBe(1, 1e-3);
        pocket.Cells.ShouldAllBe(cell => map.Problem.Cells.CentroidX[cell] > 0.2025);
    }

    [Fact]
    public void Find_TwoFrontsThatMeet_SealsBothSidesOfTheFirstMeeting()
    {
        // Feeds on the left and right edges, vents in the two middles of the long edges would be needed; only the lower one is there.
        Panel panel = new(
            new(TestPanels.Rectangle(0, 0, 0.4, 0.2), []),
            [TestPanels.Cloth, TestPanels.ZoneOf("fast", 3e-3, 0.5, 5e-10, 5e-10, area: TestPanels.Rectangle(0, 0.08, 0.4, 0.12))],
            [TestPanels.Feed(TestPanels.Path((0, 0), (0, 0.2))), TestPanels.Feed(TestPanels.Path((0.4, 0), (0.4, 0.2)))],
            [TestPanels.Vent(TestPanels.Path((0.15, 0), (0.25, 0)))],
            [],
            0.005);
        FillMap map = MapOf(panel);
        Pocket pocket = PocketFinder.Find(map).ShouldHaveSingleItem();
        pocket.SealedClock.ShouldBeInRange(0.2 * map.FillClock, 0.95 * map.FillClock);
        pocket.Cells.ShouldAllBe(cell => map.Problem.Cells.CentroidY[cell] > 0.1);
    }

    [Fact]
    public void Find_Mirrored_FindsTheMirroredPocket()
    {
        Panel Side(double vent) => new(
            new(TestPanels.Rectangle(0, 0, 0.3, 0.2), []), [TestPanels.Cloth], [TestPanels.Feed(TestPanels.Path((0.15, 0.05), (0.15, 0.15)))], [TestPanels.Vent(TestPanels.Path((vent, 0), (vent, 0.2)))], [], 0.01);
        Pocket left = PocketFinder.Find(MapOf(Side(0.3))).ShouldHaveSingleItem(), right = PocketFinder.Find(MapOf(Side(0))).ShouldHaveSingleItem();
        right.Cells.Count.ShouldBe(left.Cells.Count);
        (right.SealedClock / left.SealedClock).ShouldBe(1, 1e-6);
    }

    [Theory]
    [InlineData(0, 4)]
    [InlineData(40, 10)]
    public void SmallestPocket_OfTurnedCloth_GrowsWithTheLongestWay(double degrees, int expected)
    {
        // 20:1 at 40° runs along (2, 1), whose square is 5.
        Panel panel = StripWith([]) with { Zones = [TestPanels.ZoneOf("turned", 3e-3, 0.5, 1e-10, 0.05e-10, degrees * Math.PI / 180)] };

        PocketFinder.SmallestIn(FillProblemBuilder.Build(panel)).ShouldBe(expected);
    }

    [Fact]
    public void Find_DryLaminateUnderAWetMesh_CountsColumnsNotLayers()
    {
        // A membrane on the mesh is swamped with the mesh; what is dry below it then is a pocket, seen from above no larger than the panel.
        Panel panel = StripWith([TestPanels.Vent(TestPanels.Path((0.2025, 0), (0.2025, 0.02)), VentKind.Membrane)]) with
        {
            Zones = [TestPanels.Cloth with { Permeability = new(1e-10, 1e-10, 1e-13, 0) }],
            FlowMeshes = [new("mesh", null, PanelFace.BagSide, 1e-3, 0.85, new(3e-9, 3e-9, 1e-8, 0))],
        };
        FillMap map = MapOf(panel);
        DrySpot spot = DrySpotFinder.Find(map, new(2000, 100000)).ShouldHaveSingleItem();

        spot.Cells.Count.ShouldBe(spot.Nodes.Select(map.Problem.CellOf).Distinct().Count());
        spot.SealedArea.ShouldBeInRange(0.2975 * 0.02, 0.5 * 0.02 * (1 + 1e-9));
        spot.Area.ShouldBeLessThan(spot.SealedArea);
    }

    private static FillMap MapOf(Panel panel) => FillMap.Compute(FillProblemBuilder.Build(panel));

    private static Panel StripWith(Vent[] vents) => TestPanels.Panel(
        TestPanels.Rectangle(0, 0, 0.5, 0.02), 0.005, [TestPanels.Cloth], [TestPanels.Feed(TestPanels.Path((0, 0), (0, 0.02)))], vents);

    [Theory]
    [InlineData(20, 33)]
    [InlineData(100, 8)]
    public void Find_ThinWakeBehindACutoutInTurnedCloth_IsNotTakenForPockets(double ratio, double degrees)
    {
        // The front closes over the wake from its side; long slanted ways cut the last dry streak into pieces that the resin reaches a moment later.
        Zone zone = TestPanels.ZoneOf("skin", 3e-3, 0.5, ratio * 1e-10, 1e-10, degrees * Math.PI / 180);
        Panel panel = TestPanels.Panel(
            TestPanels.Rectangle(0, 0, 0.6, 0.4), 0.0125, [zone], [TestPanels.Feed(TestPanels.Path((0, 0), (0, 0.4)))],
            TestPanels.Vent(TestPanels.Path((0.6, 0), (0.6, 0.4)), VentKind.Membrane));
        FillMap map = FillMap.Compute(
            FillProblemBuilder.Build(panel with { Region = new(panel.Region.Outline, [TestPanels.Rectangle(0.25, 0.15, 0.31, 0.2)]) }));

        PocketFinder.Find(map).ShouldBeEmpty();
        map.Arrival.ShouldAllBe(clock => !double.IsPositiveInfinity(clock));
    }
}
