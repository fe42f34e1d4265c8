using InfusionSim.Physics.Lines;
using InfusionSim.Physics.Network;

namespace InfusionSim.Physics.Flow;

/// <summary>When resin first reaches a vent.</summary>
internal static class VentWetting
{
    // Share of the stretch within which the moment is found [-].
    private const double Settled = 1e-9;

    // Where to begin, and how far to go on while the cell is not full, over the stretch: what was followed puts the moment far closer than that.
    private const double Beyond = 0.02, FurtherOn = 0.05;

    // At most twenty steps go on to the end of the stretch. One down again halves what is left or better where the pressure has risen no faster than
    // evenly since the cell was full, so that thirty more come below a billionth.
    private const int StepLimit = 60;

    /// <summary>Drive clock at which the first resin reaches a vent [-]; +∞ when it never does.</summary>
    /// <remarks>
    /// Inside the panel the vent is wet when the front passes the middle of the first cell it touches. On the outline
    /// it lies beyond the cell and is wet once that is full: the accumulated pressure of a cell is 0 up to then and
    /// convex after, so Newton's steps from later clocks come down to it and never pass it.
    /// </remarks>
    /// <param name="map">The fill.</param>
    /// <param name="vent">Index of the vent.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static double ClockOf(FillMap map, int vent, CancellationToken cancellation)
    {
        double inside = double.PositiveInfinity, edge = double.PositiveInfinity;
        List<int> edgeCells = [];
        foreach (CellContact contact in map.Problem.Vents[vent].Contacts)
        {
            double arrival = map.Arrival[contact.Cell];
            if (!contact.IsBeside || !double.IsFinite(arrival)) continue;
            if (!contact.FullWhenWet)
            {
                inside = Math.Min(inside, arrival);
                continue;
            }

            edge = Math.Min(edge, arrival);
            edgeCells.Add(contact.Cell);
        }

        // A gap that runs into the vent brings it resin once its last length is full.
        foreach (GapContact contact in map.Problem.Network.VentedGaps)
        {
            if (contact.Line != vent || !double.IsFinite(map.Arrival[contact.GapNode])) continue;
            edge = Math.Min(edge, map.Arrival[contact.GapNode]);
            edgeCells.Add(contact.GapNode);
        }

        return edgeCells.Count == 0 ? inside : Math.Min(inside, FirstFull(map, vent, edgeCells, edge, cancellation));
    }

    private static double FirstFull(FillMap map, int vent, List<int> cells, double earliest, CancellationToken cancellation)
    {
        // Pressures accumulate anew from each turn of a clamp: look in the stretch in which the first cell fills up.
        double full = cells.Min(cell => map.FullClock[cell]);
        if (double.IsPositiveInfinity(full) && map.Stretches.Count > 1) return full;
        FillStretch stretch = map.StretchAt(Math.Min(full, map.Stretches[^1].End));
        double end = stretch.End;
        earliest = Math.Max(earliest, stretch.Start.Clock);
        double clock = Math.Min(end, earliest + Beyond * end);
        bool seenWet = false;
        for (int step = 0; step < StepLimit; step++)
        {
            FillState state = map.StateIn(stretch, clock, withPressure: true, FillMarcher.ForecastTolerance, cancellation);
            double back = 0;
            foreach (int cell in cells)
            {
                double accumulated = state.AccumulatedSinceFull(cell), pressure = state.PressureSinceFull(cell);
                if (accumulated > 0 && pressure > 0) back = Math.Max(back, accumulated / pressure);
            }

            if (back == 0)
            {
                // Exactly there, come down from a later clock: the cell is full and holds nothing more yet.
                if (seenWet) return clock;
                if (clock >= end * (1 - Settled)) return clock;
                clock = Math.Min(end, clock + FurtherOn * end);
                continue;
            }

            seenWet = true;
            clock = Math.Max(stretch.Start.Clock, clock - back);
            if (back < Settled * end) return clock;
        }

        throw new FlowNotSolvedException(
            $"When resin reaches vent \"{map.Problem.Vents[vent].Name}\" was not found: "
            + $"after {StepLimit} steps the drive clock still moved, at {clock:G6} of {end:G6}.");
    }
}
