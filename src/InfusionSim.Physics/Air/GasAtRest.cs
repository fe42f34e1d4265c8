using InfusionSim.Physics.Flow;

namespace InfusionSim.Physics.Air;

/// <summary>Sees when trapped gas has given way as far as it will, and when the panel was full but for that.</summary>
/// <remarks>
/// Towards its last volume a pocket only creeps. It is at rest when its volume changes by less than a twentieth of a per cent while the clock since the last turn of a clamp
/// grows by one per cent; the panel is taken to be full when all gas was within a tenth of its last volume (our own limits). Where clamps are turned at rest and gas
/// opens again, it was full at the rest before.
/// </remarks>
internal sealed class GasAtRest
{
    private const double Creep = 0.05;
    private const double Near = 0.1;

    // Gas below this share of the pore volume is noise of the squares; whether it moves does not matter.
    private const double Unseen = 1e-4;

    // Of the clock that the fill takes without gas.
    private const double LeastElapsed = 0.1;
    private const double Rounding = 1e-9;

    // What open vents starve is not waited for longer than this many times the clock at which it would be full without gas, and nothing for more steps than these.
    private const double Patience = 2;
    private const int StepLimit = 400;
    private readonly List<(double Clock, double Gas, double Room, double Filled)> _notes = [];

    // Each time nothing moved any more: how many steps had been noted, and the fill up to then where there was no gas.
    private readonly List<(int Notes, double Gas, double Filled, FillTotal? WithoutGas)> _rests = [];
    private double _turnedAt = double.NaN, _endWithoutGas;
    private int _steps;

    /// <summary>Whether nothing moves any more.</summary>
    public bool IsReached { get; private set; }

    /// <summary>Whether nothing moves any more and no clamp has been turned since that was seen.</summary>
    /// <param name="turnedAt">Drive clock at which a clamp was turned last [-].</param>
    public bool IsReachedSince(double turnedAt) => IsReached && turnedAt == _turnedAt;

    /// <summary>Notes that the panel was full without any gas in it.</summary>
    /// <param name="problem">The panel as numbers.</param>
    /// <param name="full">The panel then.</param>
    /// <param name="total">The fill up to then.</param>
    public void NoteFull(FillProblem problem, FillStart full, FillTotal total) => _rests.Add((_notes.Count, 0, FilledIn(problem, full.Saturation), total));

    /// <summary>Notes the end of a step.</summary>
    /// <param name="problem">The panel as numbers.</param>
    /// <param name="withoutGas">How the fill would end without gas.</param>
    /// <param name="start">The panel as the step began.</param>
    /// <param name="end">The panel as it ended.</param>
    /// <param name="pockets">The pockets.</param>
    /// <param name="turnedAt">Drive clock at which a clamp was turned last [-].</param>
    public void Note(FillProblem problem, FillTotal withoutGas, FillStart start, FillState end, IReadOnlyList<GasPocket> pockets, double turnedAt)
    {
        if (turnedAt != _turnedAt) (_turnedAt, _endWithoutGas, _steps) = (turnedAt, withoutGas.Clock, 0);
        _steps++;
        HashSet<int> inPockets = [.. pockets.SelectMany(static pocket => pocket.Nodes)];
        double room = 0, pores = 0;
        for (int node = 0; node < problem.Operator.CellCount; node++)
        {
            pores += problem.PoreVolume[node];
            if (withoutGas.Fills[node] && !inPockets.Contains(node)) room += problem.PoreVolume[node] * (1 - end.Saturation[node]);
        }

        _notes.Add((end.Clock, end.GasVolumes.Sum(), room / pores, FilledIn(problem, end.Saturation)));
        double since = Math.Min(turnedAt, start.Clock), growth = Math.Log((end.Clock - since) / (start.Clock - since));
        bool creeps = pockets.Select((pocket, k) => (Before: pocket.Nodes.Sum(node => problem.PoreVolume[node] * (1 - start.Saturation[node])), After: end.GasVolumes[k]))
            .All(gas => Math.Abs(gas.After - gas.Before) <= Creep * growth * Math.Max(gas.After, Unseen * pores));
        double elapsed = end.Clock - since;
        bool isFilled = room <= Rounding * pores || end.Clock >= Patience * _endWithoutGas;
        bool wasReached = IsReached;
        IsReached = (creeps && isFilled && elapsed >= LeastElapsed * withoutGas.Clock) || _steps >= StepLimit;
        if (IsReached && !wasReached) _rests.Add((_notes.Count, _notes[^1].Gas, _notes[^1].Filled, null));
    }

    /// <summary>How the fill ends.</summary>
    /// <param name="problem">The panel as numbers.</param>
    /// <param name="track">When the front passed.</param>
    /// <param name="pockets">What gas is left.</param>
    /// <param name="withoutGas">How the fill would end without gas.</param>
    public FillTotal TotalOf(FillProblem problem, FrontTrack track, IReadOnlyList<GasPocket> pockets, FillTotal withoutGas)
    {
        if (_notes.Count == 0) return withoutGas;
        // After the first rest that nothing went beyond, air has only opened again.
        (int at, _, _, FillTotal? full) = _rests.Find(rest => _notes.Skip(rest.Notes).All(note => note.Filled <= rest.Filled * (1 + Rounding) + Near * rest.Gas));
        if (full is not null) return new FillTotal(full.Clock, full.LastCell, withoutGas.SteadyPressure, withoutGas.Fills);
        int end = at > 0 ? at - 1 : _notes.Count - 1, first = end;
        double last = Math.Max(_notes[end].Gas, Unseen * problem.PoreVolume.Sum());
        while (first > 0 && Math.Abs(_notes[first - 1].Gas - last) <= Near * last && _notes[first - 1].Room <= Math.Max(Rounding, _notes[end].Room)) first--;
        double clock = first > 0 && _notes[first - 1].Room <= Math.Max(Rounding, _notes[end].Room) ? Between(_notes[first - 1], _notes[first], last) : _notes[first].Clock;
        HashSet<int> dry = [.. pockets.SelectMany(static pocket => pocket.Nodes)];
        int lastCell = -1;
        for (int cell = 0; cell < problem.Operator.CellCount; cell++)
        {
            if (dry.Contains(cell) || !(track.Arrival[cell] <= clock)) continue;
            if (lastCell < 0 || track.Arrival[cell] > track.Arrival[lastCell]) lastCell = cell;
        }

        return new FillTotal(clock, lastCell, withoutGas.SteadyPressure, withoutGas.Fills);
    }

    // Within a step the volume runs straight, to within what a step resolves.
    private static double Between((double Clock, double Gas, double Room, double Filled) before, (double Clock, double Gas, double Room, double Filled) after, double last)
    {
        double sought = last * (before.Gas > last ? 1 + Near : 1 - Near);
        return before.Clock + (after.Clock - before.Clock) * Math.Clamp((before.Gas - sought) / (before.Gas - after.Gas), 0, 1);
    }

    private static double FilledIn(FillProblem problem, double[] saturation)
    {
        double filled = 0;
        for (int node = 0; node < problem.Operator.CellCount; node++) filled += problem.PoreVolume[node] * saturation[node];
        return filled;
    }
}
