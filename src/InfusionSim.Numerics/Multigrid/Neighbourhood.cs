using System.Runtime.CompilerServices;

namespace InfusionSim.Numerics.Multigrid;

/// <summary>Couplings of one cell to the neighbours in its layer that take part, and what else of its diagonal lies in the layer.</summary>
internal unsafe struct Neighbourhood
{
    /// <summary>Coupling to one neighbour.</summary>
    public float West, East, South, North, SouthWest, SouthEast, NorthWest, NorthEast;

    /// <summary>Conductance to a pressure of 0: to feeds, vents and neighbours that take no part.</summary>
    public float ToZero;

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
        here.West = d[at - 1] > 0 ? e[at - 1] : 0;
        here.East = d[at + 1] > 0 ? e[at] : 0;
        here.South = d[at - s] > 0 ? n[at - s] : 0;
        here.North = d[at + s] > 0 ? n[at] : 0;
        float sum = here.West + here.East + here.South + here.North;
        if (level.NorthEast is not null)
        {
            float* ne = level.NorthEast.Origin, nw = level.NorthWest!.Origin;
            here.SouthWest = d[at - s - 1] > 0 ? ne[at - s - 1] : 0;
            here.NorthEast = d[at + s + 1] > 0 ? ne[at] : 0;
            here.SouthEast = d[at - s + 1] > 0 ? nw[at - s + 1] : 0;
            here.NorthWest = d[at + s - 1] > 0 ? nw[at] : 0;
            sum += here.SouthWest + here.SouthEast + here.NorthWest + here.NorthEast;
        }

        // A line node stands at nearly the pressure of the cells beside it: as a way to 0 it would pull the weights below 1.
        float lines = level.LinkSum is null ? 0 : level.LinkSum.Origin[at];
        here.ToZero = Math.Max(0, level.Rest.Origin[at] - lines - sum);
        return here;
    }
}
