using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Panels;
using InfusionSim.Verification.Tests.Accuracy;
using InfusionSim.Verification.Tests.ClosedForms;
using InfusionSim.Verification.Tests.Settings;

namespace InfusionSim.Verification.Tests;

/// <summary>A small fitting beside a long straight wall: the front is half a Neumann oval.</summary>
public sealed class FittingBesideWallTests
{
    private const string Source = "oval, Richardson 1981 (from memory)";
    private const double CellSize = 5e-3;

    [Fact]
    public void Front_BesideAWall_IsHalfANeumannOval()
    {
        // Source: ϱ² = 2r² + 2d² cos 2α, Richardson, J. Fluid Mech. 102 (1981) 263, from memory; moments rederived.
        // Case: wall x = 0, fitting at d = 0.1 m, read where the wet area is π·0.15² m². No clock and no viscosity enter.
        var oval = new WallOval(0.1, 0.15);
        oval.Contact.ShouldBe(0.1581139, 5e-8);
        oval.Reach.ShouldBe(0.2549510, 5e-8);
        // The grid begins half a cell beyond the wall, so that 0.1 m is the middle of a cell and the wall cuts the first one.
        const double HalfHeight = 0.3;
        var fitting = new Point2(oval.Distance, HalfHeight + CellSize / 2);
        FillProblem problem = Chain.Problem(
            Chain.ReferencePanel(Shapes.Rectangle(0.4, 2 * HalfHeight + CellSize), CellSize, new LinePath([fitting]), new LinePath([new(0.4, 0)])) with
            {
                Feeds = [new Feed("F1", new LinePath([fitting]), 1.5e-3)],
            },
            new Point2(-CellSize / 2, 0));
        FillMap map = Chain.Map(problem);
        double area = Math.PI * oval.EqualRadius * oval.EqualRadius;
        double clock = ClockSearch.WhenReached(map, state => new FrontReader(problem.Cells, state).WetArea, area);
        var front = new FrontReader(problem.Cells, Chain.State(map, clock));

        // Tolerance: one cell, the width over which a front is spread.
        var foot = new Point2(0, fitting.Y);
        string grid = Chain.GridOf(problem);
        Near("contact above", oval.Contact, front.FrontAlong(foot, Math.PI / 2, 1));
        Near("contact below", oval.Contact, front.FrontAlong(foot, -Math.PI / 2, 1));
        Near("reach", oval.Reach, front.FrontAlong(foot, 0, 1));
        foreach (double angle in new[] { -1.2, -0.8, -0.4, 0.3, 0.6, 0.9, 1.3 })
            Near($"radius at {angle} rad", oval.RadiusAt(angle), front.FrontAlong(foot, angle, 1));

        void Near(string what, double expected, double observed)
        {
            var record = new AccuracyRecord(
                $"fitting beside a wall, {what}", Source, expected * 1e3, observed * 1e3, "mm", grid, InTable: what is "contact above" or "reach");
            record.ShouldHold(CellSize / expected);
        }
    }
}
