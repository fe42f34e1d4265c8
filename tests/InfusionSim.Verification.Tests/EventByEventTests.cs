using System.Collections.Concurrent;
using InfusionSim.Physics.Flow;
using InfusionSim.Verification.Tests.Accuracy;
using InfusionSim.Verification.Tests.EventByEvent;
using InfusionSim.Verification.Tests.Settings;

namespace InfusionSim.Verification.Tests;

/// <summary>The fill without time steps against a scheme that fills one cell after the other with exact steps, on random panels.</summary>
public sealed class EventByEventTests
{
    private static readonly ConcurrentDictionary<int, Lazy<PanelFill>> Fills = new();

    /// <summary>Seeds of the panels.</summary>
    public static TheoryData<int> Seeds => [.. RandomPanels.Seeds];

    /// <summary>Seeds of the panels on which every arrival is compared.</summary>
    public static TheoryData<int> FirstSeeds => [.. RandomPanels.Seeds.Take(20)];

    [Fact]
    public void Panels_Drawn_ShowEveryFeature()
    {
        // A check of the cases themselves: cut-outs, vents that pass resin and those that do not, feeds at two pressures, scatter.
        FillProblem[] problems = [.. RandomPanels.Seeds.Select(RandomPanels.Draw)];

        problems.Length.ShouldBeGreaterThanOrEqualTo(50);
        problems.Count(problem => problem.VentPassesResin[0]).ShouldBeInRange(problems.Length / 3, 2 * problems.Length / 3);
        problems.Count(problem => problem.FeedPressures.Any(pressure => pressure < 1)).ShouldBeGreaterThan(5);
        problems.Count(problem => problem.PoreVolume.Any(volume => volume == 0)).ShouldBeGreaterThan(problems.Length / 2);
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void State_AtFiveClocks_IsThatOfTheSchemeOfEvents(int seed)
    {
        // Source: cells that are not full have stood at the vents' pressure all along, so the scheme with exact steps solves the same
        // complementarity problem (derived; Elliott and Janovský 1981, from memory). Case: one random panel, five clocks.
        PanelFill fill = FillOf(seed);

        // Expected: the scheme's full cells and saturations. Tolerance: identical sets, and 1e-6 on a saturation, the solver's own.
        foreach (CellByCellState expected in fill.Events.States)
        {
            FillState observed = Chain.State(fill.Map, expected.Clock);
            int differing = 0;
            double worst = 0;
            for (int cell = 0; cell < expected.Full.Length; cell++)
            {
                if (observed.AccumulatedPressure[cell] > 0 != expected.Full[cell]) differing++;
                worst = Math.Max(worst, Math.Abs(observed.Saturation[cell] - expected.Saturation[cell]));
            }

            string where = $"seed {seed}, clock {expected.Clock / fill.Map.FillClock:G3} of the fill, {Chain.GridOf(fill.Problem)}: {differing} cells differ, largest difference of saturation {worst:G3}";
            TestContext.Current.TestOutputHelper?.WriteLine(where);
            differing.ShouldBe(0, where);
            worst.ShouldBeLessThanOrEqualTo(1e-6, where);
        }
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void TotalFill_FromOneOrTwoSolves_IsThatOfTheSchemeOfEvents(int seed)
    {
        // Source: θ = max u/P with A u = C, A P = g (derived). Case: the same panels, by direct elimination outside the production path.
        PanelFill fill = FillOf(seed);
        TotalFill direct = TotalFill.Of(fill.Problem);

        // Expected: clock and cell of the last event. Tolerance: 1e-9 between two direct schemes, 1e-6 for the solver under test.
        string where = $"seed {seed}, {Chain.GridOf(fill.Problem)}: events {fill.Events.FillClock:G12}, one or two solves {direct.Clock:G12}, map {fill.Map.FillClock:G12}";
        TestContext.Current.TestOutputHelper?.WriteLine(where);
        (direct.Clock / fill.Events.FillClock).ShouldBe(1, 1e-9, where);
        direct.LastCell.ShouldBe(fill.Events.LastCell, where);
        (fill.Map.FillClock / fill.Events.FillClock).ShouldBe(1, 1e-6, where);
        fill.Map.LastCell.ShouldBe(fill.Events.LastCell, where);
    }

    [Theory]
    [MemberData(nameof(FirstSeeds))]
    public void Arrival_InEveryCell_IsTheHalfFullClock(int seed)
    {
        // Source: the half-full clocks of the scheme of events, exact to rounding. Case: every cell, the last places included.
        PanelFill fill = FillOf(seed);
        double worst = 0;
        int worstCell = -1;
        for (int cell = 0; cell < fill.Problem.PoreVolume.Length; cell++)
        {
            if (fill.Problem.PoreVolume[cell] == 0)
            {
                double.IsNaN(fill.Map.Arrival[cell]).ShouldBeTrue($"cell {cell} without cloth");
                continue;
            }

            double difference = Math.Abs(fill.Map.Arrival[cell] - fill.Events.HalfFullClock[cell]) / fill.Events.FillClock;
            if (!(difference <= worst)) (worst, worstCell) = (difference, cell);
        }

        // Tolerance 0.1 % of the fill: what a picture of the front can show.
        string where = $"seed {seed}, {Chain.GridOf(fill.Problem)}: largest difference {worst:G3} of the fill in cell {worstCell}";
        TestContext.Current.TestOutputHelper?.WriteLine(where);
        worst.ShouldBeLessThanOrEqualTo(1e-3, where);
    }

    [Fact]
    public void Panels_AllTogether_AgreeToTheSolversTolerance()
    {
        // Source and cases as in the theories above; the worst of each goes into the table as a ratio whose expected value is 1.
        double total = 0, saturation = 0, arrival = 0;
        foreach (int seed in RandomPanels.Seeds)
        {
            PanelFill fill = FillOf(seed);
            total = Math.Max(total, Math.Abs(fill.Map.FillClock / fill.Events.FillClock - 1));
            foreach (CellByCellState expected in fill.Events.States)
                saturation = Math.Max(saturation, Chain.State(fill.Map, expected.Clock).Saturation.Zip(expected.Saturation, (a, b) => Math.Abs(a - b)).Max());
            for (int cell = 0; cell < fill.Problem.PoreVolume.Length; cell++)
                if (fill.Problem.PoreVolume[cell] > 0) arrival = Math.Max(
                    arrival, Math.Abs(fill.Map.Arrival[cell] - fill.Events.HalfFullClock[cell]) / fill.Events.FillClock);
        }

        // Tolerances as above.
        string grid = $"{RandomPanels.Seeds.Count} panels, 20 × 15 to 40 × 30 cells";
        Worst("total fill", total, 1e-6);
        Worst("saturations at five clocks", saturation, 1e-6);
        Worst("arrivals, in shares of the fill", arrival, 1e-3);

        void Worst(string what, double difference, double tolerance) =>
            new AccuracyRecord(
                $"random panels, {what}, worst cell", "cell-by-cell scheme with exact steps, kept in the tests", 1, 1 + difference, "",
                grid).ShouldHold(tolerance);
    }

    private static PanelFill FillOf(int seed) => Fills.GetOrAdd(seed, key => new Lazy<PanelFill>(() => PanelFill.Of(key))).Value;

    private sealed record PanelFill(FillProblem Problem, CellByCellFill Events, FillMap Map)
    {
        public static PanelFill Of(int seed)
        {
            FillProblem problem = RandomPanels.Draw(seed);
            double fill = TotalFill.Of(problem).Clock;
            var random = new Random(seed ^ 0x5bd1e995);
            double[] clocks = [.. Enumerable.Range(0, 5).Select(k => fill * (k + random.NextDouble()) / 5).Order()];
            return new PanelFill(problem, CellByCellFill.Run(problem, clocks), Chain.Map(problem));
        }
    }
}
