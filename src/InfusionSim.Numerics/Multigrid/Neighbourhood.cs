using System.Runtime.CompilerServices;

namespace InfusionSim.Numerics.Multigrid;

/// <summary>Couplings of one cell to the neighbours in its layer that take part, and what else of its diagonal lies in the layer.</summary>
internal unsafe struct Neighbourhood
{
    /// <summary>Coupling to one neighbour.</summary>
    public float West, East, South, North, SouthWest, SouthEast, NorthWest, NorthEast;

    /// <summary>Conductance to a pressure of 0: to feeds, vents and neighbours that take no part.</summary>
    public float ToZero;

    /// <summary>Sum of the couplings to neighbours that take part.</summary>
    public readonly double Sum => (double)West + East + South + North + SouthWest + SouthEast + NorthWest + NorthEast;

    /// <summary>Collects the couplings of a cell.</summary>
    /// <param name="level">Grid.</param>
    /// <param name="at">Where the cell lies.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Neighbourhood Of(MultigridLevel level, int at)
    {
        int s = level.Layout.Stride;
        float* d = level.Diagonal.Origin;
        float* e = level.East.Origin, n = level.North.Origin;
        Neighbourhood here = default;
        float lost = 0;
        here.West = Split(e[at - 1], d[at - 1], ref lost);
        here.East = Split(e[at], d[at + 1], ref lost);
        here.South = Split(n[at - s], d[at - s], ref lost);
        here.North = Split(n[at], d[at + s], ref lost);
        if (level.NorthEast is not null)
        {
            float* ne = level.NorthEast.Origin, nw = level.NorthWest!.Origin;
            here.SouthWest = Split(ne[at - s - 1], d[at - s - 1], ref lost);
            here.NorthEast = Split(ne[at], d[at + s + 1], ref lost);
            here.SouthEast = Split(nw[at - s + 1], d[at - s + 1], ref lost);
            here.NorthWest = Split(nw[at], d[at + s - 1], ref lost);
        }

        // Links to line nodes do not count: those stand at nearly the pressure of the cells beside them, and as a way to 0 would pull the weights below 1.
        here.ToZero = Math.Max(0, level.Slack.Origin[at] + lost);
        return here;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static float Split(float coupling, float diagonal, ref float lost)
    {
        if (diagonal > 0) return coupling;
        lost += coupling;
        return 0;
    }
}
