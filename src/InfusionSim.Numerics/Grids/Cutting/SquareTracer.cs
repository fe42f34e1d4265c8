namespace InfusionSim.Numerics.Grids.Cutting;

/// <summary>Joins the border stretches inside one square to closed borders, and so to the connected parts of the region there.</summary>
/// <remarks>
/// Where several stretches leave one place, the trace takes the one furthest to the left: it bounds the same wedge of the region, so parts
/// that only touch in a point stay apart.
/// </remarks>
internal sealed class SquareTracer(UniformGrid grid, int[] partOfPiece)
{
    private readonly Dictionary<GridPoint, List<int>> leaving = [];

    /// <summary>Traces one square. The largest part comes first; pieces and openings learn which position in the answer they belong to.</summary>
    /// <param name="square">Index of the square.</param>
    /// <param name="stretches">All border stretches of the square.</param>
    /// <param name="numberOf">Gives a part its number from its position in the order of size.</param>
    public List<SquarePart> Trace(int square, List<BorderStretch> stretches, Func<int, int> numberOf)
    {
        double middleU = grid.ColumnOf(square) + 0.5, middleV = grid.RowOf(square) + 0.5;
        leaving.Clear();
        for (int k = stretches.Count - 1; k >= 0; k--)
        {
            if (!leaving.TryGetValue(stretches[k].Start, out List<int>? list)) leaving[stretches[k].Start] = list = [];
            list.Add(k);
        }

        var loops = new List<(List<int> Members, List<GridPoint> Corners, double Area, double MomentU, double MomentV)>();
        var used = new bool[stretches.Count];
        for (int first = 0; first < stretches.Count; first++)
        {
            if (used[first]) continue;
            List<int> members = Follow(first, stretches, used);
            List<GridPoint> corners = members.ConvertAll(m => stretches[m].Start);
            (double area, double momentU, double momentV) = PolygonMoments.Of(corners, middleU, middleV);
            loops.Add((members, corners, area, momentU, momentV));
        }

        var parts = new List<(SquarePart Part, List<int> Members)>();
        foreach (var loop in loops)
        {
            if (loop.Area <= 0) continue;
            var part = new SquarePart(square, loop.Corners) { Area = loop.Area, MomentU = loop.MomentU, MomentV = loop.MomentV };
            parts.Add((part, loop.Members));
        }

        foreach (var loop in loops)
        {
            if (loop.Area > 0) continue;
            BorderStretch some = stretches[loop.Members[0]];
            var inside = new GridPoint((some.Start.U + some.End.U) / 2, (some.Start.V + some.End.V) / 2);
            int around = parts.Count == 1 ? 0 : parts.FindIndex(p => PolygonMoments.Contains(p.Part.Outer, inside));
            if (around < 0)
            {
                // A border without area: rounding flattened a spike. Its pieces still need an owner.
                parts.Add((new SquarePart(square, loop.Corners), loop.Members));
                continue;
            }

            (SquarePart part, List<int> members) = parts[around];
            part.Area += loop.Area;
            part.MomentU += loop.MomentU;
            part.MomentV += loop.MomentV;
            part.Holes.Add(loop.Corners);
            members.AddRange(loop.Members);
        }

        parts.Sort(static (a, b) => b.Part.Area.CompareTo(a.Part.Area));
        for (int k = 0; k < parts.Count; k++)
        {
            int number = parts[k].Part.Number = numberOf(k);
            foreach (int m in parts[k].Members) Label(stretches[m], square, number);
        }

        return parts.ConvertAll(p => p.Part);
    }

    private void Label(BorderStretch stretch, int square, int number)
    {
        if (stretch.Piece >= 0) partOfPiece[stretch.Piece] = number;
        else if (stretch.Opening!.Square == square) stretch.Opening.PartBefore = number;
        else stretch.Opening.PartBeyond = number;
    }

    private List<int> Follow(int first, List<BorderStretch> stretches, bool[] used)
    {
        var members = new List<int>();
        int current = first;
        while (current >= 0 && !used[current])
        {
            used[current] = true;
            members.Add(current);
            current = Next(stretches[current], first, stretches, used);
        }

        return members;
    }

    private int Next(BorderStretch arriving, int first, List<BorderStretch> stretches, bool[] used)
    {
        if (!leaving.TryGetValue(arriving.End, out List<int>? choices)) return -1;
        int best = -1;
        double bestTurn = double.MaxValue;
        double back = Math.Atan2(arriving.Start.V - arriving.End.V, arriving.Start.U - arriving.End.U);
        foreach (int k in choices)
        {
            // Where the trace began it may end, though other stretches leave from there.
            if (used[k] && k != first) continue;
            if (choices.Count == 1) return k;
            double ahead = Math.Atan2(stretches[k].End.V - stretches[k].Start.V, stretches[k].End.U - stretches[k].Start.U);
            // Clockwise from the way back: the first stretch met closes the wedge on the left.
            double turn = back - ahead;
            if (turn <= 0) turn += 2 * Math.PI;
            if (turn < bestTurn) (best, bestTurn) = (k, turn);
        }

        return best;
    }
}
