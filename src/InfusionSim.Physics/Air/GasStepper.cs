using InfusionSim.Physics.Flow;

namespace InfusionSim.Physics.Air;

/// <summary>Takes one step of a fill in which trapped gas pushes back.</summary>
/// <remarks>
/// The pressure of each pocket runs straight through the step, and its end is sought so that pressure times volume is what it was (Newton's method pocket by pocket with the
/// slope seen in the last two tries; pockets that talk through the resin settle together). Second order in the length of the step. The amount of gas stays to rounding
/// whatever the pressure comes to, because the next step takes amount over volume.
/// </remarks>
/// <param name="problem">The panel as numbers, with the clamps as they stand.</param>
/// <param name="reached">Nodes that a feed or gas can act on. [nodes].</param>
/// <param name="arrival">When the front passed each node [-]. [nodes].</param>
/// <param name="bagPressure">Absolute pressure under the bag [Pa].</param>
/// <param name="drive">Driving pressure [Pa].</param>
/// <param name="leak">What leaks into pockets; null for nothing.</param>
internal sealed class GasStepper(FillProblem problem, bool[] reached, double[] arrival, double bagPressure, double drive, PocketLeak? leak)
{
    private const double Tolerance = 1e-6;
    private const double WorstAccepted = 1e-4;
    private const int TryLimit = 15;

    // Imbalance of the states that the pressure is sought with; the state that is kept is computed anew.
    private const double SearchTolerance = 1e-8;
    private const int HalvingLimit = 30;

    // First try beyond a pressure that was too low, over the driving pressure.
    private const double Stride = 0.1;

    /// <summary>A marcher that is done with, whose solver goes on; null for none.</summary>
    public FillMarcher? Before { get; init; }

    /// <summary>Takes a step.</summary>
    /// <param name="start">The panel as the step begins.</param>
    /// <param name="pockets">The pockets.</param>
    /// <param name="pace">How long it is to be.</param>
    /// <param name="longest">Longest length allowed [-].</param>
    /// <param name="cancellation">Stops the work.</param>
    public FillStretch Step(FillStart start, IReadOnlyList<GasPocket> pockets, GasPace pace, double longest, CancellationToken cancellation)
    {
        IReadOnlyList<int>[] nodes = [.. pockets.Select(pocket => (IReadOnlyList<int>)[.. pocket.Nodes.Where(node => start.Saturation[node] < 1)])];
        double[] before = [.. nodes.Select(pocket => pocket.Sum(node => problem.PoreVolume[node] * (1 - start.Saturation[node])))];
        double[] from = [.. pockets.Select((pocket, k) => before[k] > 0 ? Math.Max(0, (pocket.Amount / before[k] - bagPressure) / drive) : 1)];
        FillMarcher? marcher = Before;
        for (int halving = 0; ; halving++)
        {
            double length = Math.Min(pace.Span, longest);
            GasHold hold = new(nodes, from, length);
            FillStretch stretch = new(problem, reached, start, start.Clock + length) { Gas = hold, Pockets = pockets };
            marcher = stretch.NewMarcher(arrival, marcher);
            stretch = stretch with { Marcher = marcher };
            (bool isFound, IReadOnlyList<double> after) = Settle(stretch, hold, AmountsAt(pockets, start.Clock, stretch.End), cancellation);
            double change = isFound ? pace.ChangeOf(from, hold.To, before, after) : double.NaN;
            if (change <= 1)
            {
                pace.GoOn(length, change, before, after);
                return stretch;
            }

            if (halving == HalvingLimit) throw new FlowNotSolvedException($"The pressure of trapped air after drive clock {start.Clock:G6} was not found.");
            pace.Shorten(length, change);
        }
    }

    /// <summary>Gas in each pocket at a clock [Pa·m³].</summary>
    /// <param name="pockets">The pockets as they were at an earlier one.</param>
    /// <param name="from">The earlier drive clock [-].</param>
    /// <param name="to">The later one [-].</param>
    public double[] AmountsAt(IReadOnlyList<GasPocket> pockets, double from, double to) =>
        [.. pockets.Select(pocket => pocket.Amount + (leak?.Into(pocket, problem.Cells.Area.Sum(), from, to) ?? 0))];

    private (bool IsFound, IReadOnlyList<double> Volumes) Settle(FillStretch stretch, GasHold hold, double[] amounts, CancellationToken cancellation)
    {
        int count = amounts.Length;
        double[] tried = new double[count], volumeTried = new double[count], lowest = new double[count], highest = new double[count];
        Array.Fill(highest, double.PositiveInfinity);
        IReadOnlyList<double> volumes = [];
        for (int round = 0; round < TryLimit; round++)
        {
            volumes = stretch.Marcher!.StateAt(stretch.End, withPressure: false, SearchTolerance, cancellation).GasVolumes;
            double worst = 0;
            for (int k = 0; k < count; k++)
            {
                double here = hold.To[k], absolute = bagPressure + here * drive, excess = absolute * volumes[k] / amounts[k] - 1;
                if (here == 0 && excess > 0) continue;
                worst = Math.Max(worst, Math.Abs(excess));
                if (excess > 0) highest[k] = Math.Min(highest[k], here);
                else lowest[k] = Math.Max(lowest[k], here);
                double slope = round > 0 && here != tried[k] ? Math.Max(0, (volumes[k] - volumeTried[k]) / (here - tried[k])) : 0;
                double next = here - (absolute * volumes[k] - amounts[k]) / (drive * volumes[k] + absolute * slope);
                if (!double.IsFinite(next)) next = 2 * here + Stride;
                if (count == 1 && (next <= lowest[k] || next >= highest[k]) && double.IsFinite(highest[k])) next = (lowest[k] + highest[k]) / 2;
                (tried[k], volumeTried[k]) = (here, volumes[k]);
                hold.To[k] = Math.Max(0, next);
            }

            if (worst > Tolerance) continue;
            for (int k = 0; k < count; k++) hold.To[k] = tried[k];
            return (true, volumes);
        }

        double left = Enumerable.Range(0, count).Max(k => hold.To[k] == 0 ? 0 : Math.Abs((bagPressure + tried[k] * drive) * volumes[k] / amounts[k] - 1));
        for (int k = 0; k < count; k++) hold.To[k] = tried[k];
        return (left <= WorstAccepted, volumes);
    }
}
