using InfusionSim.Numerics.Geometry;
using InfusionSim.Numerics.Grids;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Network;
using InfusionSim.Physics.Panels;
using InfusionSim.Verification.Tests.Accuracy;
using InfusionSim.Verification.Tests.Settings;

namespace InfusionSim.Verification.Tests;

/// <summary>A gap along one edge of a panel, through which the resin races ahead.</summary>
public sealed class RaceTrackTests
{
    private const string Source = "own reference, the gap as cells of its own on squares 2.5 times finer";
    private const string InnerSource = "own reference, the gap as squares of its own";
    private const double Length = 0.5, Width = 0.2, GapWidth = 2e-3, CellSize = 2.5e-3, FineSize = 1e-3;
    private static readonly Point2[] Places = [new(0.25, 0.19), new(0.25, 0.01), new(0.49, 0.19)];

    [Fact]
    public void Arrivals_BesideAGap_AreThoseOfTheResolvedGap()
    {
        // Case: 500 × 200 × 3 mm, K 1e-10, φ 0.5, gap of 2 mm on the long edge y = 200 mm, fed on a short edge. Reference: the gap as a strip of
        // cells with φ 1 and the duct law.
        double duct = Passages.Duct(GapWidth, Reference.Thickness);
        duct.ShouldBe(1.9576e-7, 1e-11);
        FillMap map = FillMap.Compute(Chain.Problem(Gapped()));
        FillProblem resolved = Chain.Problem(Resolved(duct));
        bool[] all = [.. resolved.PoreVolume.Select(static volume => volume > 0)];
        FillMarcher fine = new(resolved, all);

        // Tolerance 2 %: what the coarser squares and a gap without room for cross-flow leave.
        foreach (Point2 place in Places)
        {
            double observed = map.ArrivalAt(place), expected = WhenHalfWet(fine, resolved, place, 0.8 * observed, 1.2 * observed);
            new AccuracyRecord(
                $"race-track, arrival at {place.X * 1e3:0}, {place.Y * 1e3:0} mm", Source, expected / Reference.ClockRate, observed / Reference.ClockRate, "s", Chain.GridOf(map.Problem)).ShouldHold(0.02);
        }

        double fill = FillTotal.Of(resolved, all, Chain.SolverTolerance).Clock;
        new AccuracyRecord(
            "race-track, fill", Source, fill / Reference.ClockRate, map.FillClock / Reference.ClockRate, "s", Chain.GridOf(map.Problem)).ShouldHold(0.02);
        foreach (double share in (double[])[0.01, 0.1, 0.5, 1]) Chain.State(map, share * map.FillClock);
    }

    [Fact]
    public void Arrivals_BesideAGapInTheCloth_AreThoseOfTheResolvedGap()
    {
        // Case: the same panel with the gap in its midst, as at a butt joint, on squares of 4 mm. Reference: the gap as a row of squares of 2 mm.
        const double Middle = 0.101, Coarse = 4e-3;
        Gap gap = new("G1", new([new(0, Middle), new(Length, Middle)]), GapWidth, null);
        Zone strip = Reference.Isotropic(
            "gap", Passages.Duct(GapWidth, Reference.Thickness), 1, Reference.Thickness, Shapes.Box(0, Middle - GapWidth / 2, Length, Middle + GapWidth / 2));
        Panel bare = Gapped() with { Gaps = [] };
        FillMap map = FillMap.Compute(Chain.Problem(bare with { Gaps = [gap], CellSize = Coarse }));
        FillProblem resolved = Chain.Problem(bare with { Zones = [Reference.Skin, strip], CellSize = GapWidth });
        bool[] all = [.. resolved.PoreVolume.Select(static volume => volume > 0)];
        FillMarcher fine = new(resolved, all);

        // Tolerance 2 % as above.
        foreach (Point2 place in (Point2[])[new(0.25, 0.12), new(0.25, 0.19), new(0.49, 0.02)])
        {
            double observed = map.ArrivalAt(place), expected = WhenHalfWet(fine, resolved, place, 0.8 * observed, 1.2 * observed);
            new AccuracyRecord(
                $"gap in the cloth, arrival at {place.X * 1e3:0}, {place.Y * 1e3:0} mm", InnerSource, expected / Reference.ClockRate, observed / Reference.ClockRate, "s", Chain.GridOf(map.Problem)).ShouldHold(0.02);
        }

        double fill = FillTotal.Of(resolved, all, Chain.SolverTolerance).Clock;
        new AccuracyRecord(
            "gap in the cloth, fill", InnerSource, fill / Reference.ClockRate, map.FillClock / Reference.ClockRate, "s",
            Chain.GridOf(map.Problem)).ShouldHold(0.02);
        Chain.State(map, 0.3 * map.FillClock);
    }

    // The places lie at corners of the fine squares: a front that passes has filled half of the four squares round it.
    private static double WhenHalfWet(FillMarcher fine, FillProblem problem, Point2 place, double low, double high)
    {
        UniformGrid grid = problem.Cells.Grid;
        int cell = grid.IndexOf((int)Math.Round(place.X / grid.CellSize) - 1, (int)Math.Round(place.Y / grid.CellSize) - 1);
        int[] round = [cell, cell + 1, cell + grid.Columns, cell + grid.Columns + 1];
        WetShare(low).ShouldBeLessThan(0.5);
        WetShare(high).ShouldBeGreaterThan(0.5);
        while (high - low > 1e-4 * high)
        {
            double middle = (low + high) / 2;
            if (WetShare(middle) < 0.5) low = middle;
            else high = middle;
        }

        return (low + high) / 2;

        double WetShare(double clock)
        {
            FillState state = fine.StateAt(clock, withPressure: false, FillMarcher.TrackingTolerance);
            return round.Average(one => state.Saturation[one]);
        }
    }

    private static Panel Gapped() => new(
        new(Shapes.Rectangle(Length, Width), []),
        [Reference.Skin],
        [new Feed("F1", new([new(0, 0), new(0, Width)]), 0.012)],
        [],
        [],
        CellSize)
    {
        Gaps = [new Gap("G1", new([new(0, Width), new(Length, Width)]), GapWidth, null)],
    };

    private static Panel Resolved(double duct) => new(
        new(Shapes.Rectangle(Length, Width + GapWidth), []),
        [Reference.Skin, Reference.Isotropic("gap", duct, 1, Reference.Thickness, Shapes.Box(0, Width, Length, Width + GapWidth))],
        [new Feed("F1", new([new(0, 0), new(0, Width + GapWidth)]), 0.012)],
        [],
        [],
        FineSize);
}
