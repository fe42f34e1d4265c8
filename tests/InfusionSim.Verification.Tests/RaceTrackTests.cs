using InfusionSim.Numerics.Geometry;
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
    private const double Length = 0.5, Width = 0.2, GapWidth = 2e-3, CellSize = 2.5e-3, FineSize = 1e-3;
    private static readonly Point2[] Places = [new(0.25, 0.19), new(0.25, 0.01), new(0.49, 0.19)];

    [Fact]
    [Trait("Speed", "Slow")]
    public void Arrivals_BesideAGap_AreThoseOfTheResolvedGap()
    {
        // Case: 500 × 200 × 3 mm, K 1e-10, φ 0.5, gap of 2 mm on the long edge y = 200 mm, fed on a short edge. Reference: the gap as a strip of cells with φ 1 and the duct law.
        double duct = Passages.Duct(GapWidth, Reference.Thickness);
        duct.ShouldBe(1.9576e-7, 1e-11);
        FillMap map = FillMap.Compute(Chain.Problem(Gapped()));
        FillMap fine = FillMap.Compute(Chain.Problem(Resolved(duct)));

        // Tolerance 2 %: what the coarser squares and a gap without room for cross-flow leave.
        foreach (Point2 place in Places)
        {
            new AccuracyRecord(
                $"race-track, arrival at {place.X * 1e3:0}, {place.Y * 1e3:0} mm", Source, fine.ArrivalAt(place) / Reference.ClockRate, map.ArrivalAt(place) / Reference.ClockRate, "s", Chain.GridOf(map.Problem)).ShouldHold(0.02);
        }

        new AccuracyRecord("race-track, fill", Source, fine.FillClock / Reference.ClockRate, map.FillClock / Reference.ClockRate, "s", Chain.GridOf(map.Problem)).ShouldHold(0.02);
        foreach (double share in (double[])[0.01, 0.1, 0.5, 1]) Chain.State(map, share * map.FillClock);
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
