namespace InfusionSim.Numerics.Grids.Cutting;

/// <summary>Gives each small part of a cut square to a neighbour, so that one square is one unknown and no unknown is a sliver.</summary>
/// <remarks>
/// The largest part of a square keeps the square when it holds at least <see cref="SmallestShare"/> of it. Every other part joins the
/// host with which it shares the longest open face, in rounds from the hosts outwards, so that chains of slivers end in one host. A sliver
/// is kept after all where joining would cut a passage: when two hosts that touched through it could reach each other only by a
/// long way round.
/// </remarks>
internal sealed class PartMerger
{
    /// <summary>Share of a square below which its largest part is a sliver [-]; our choice: small enough to keep the second order, large enough for the conditioning.</summary>
    public const double SmallestShare = 0.02;

    private const int Open = -2, Outside = -1;
    private readonly CutSquares squares;
    private readonly Dictionary<int, List<FaceOpening>> openingsOf = [];
    private readonly HashSet<int> keptAnyway = [];

    /// <summary>Merges the parts.</summary>
    /// <param name="squares">The cut region.</param>
    public PartMerger(CutSquares squares)
    {
        this.squares = squares;
        HostOf = new int[squares.NumberCount];
        foreach (FaceOpening opening in squares.Openings)
        {
            OpeningsOf(opening.PartBefore).Add(opening);
            OpeningsOf(opening.PartBeyond).Add(opening);
        }

        double threshold = squares.Parts.Exists(p => p.Number == p.Square && p.Area >= SmallestShare) || Enumerable.Range(0, squares.Grid.CellCount).Any(squares.IsWhole)
            ? SmallestShare
            : 0;
        do Resolve(threshold);
        while (KeepCutPassages());
    }

    /// <summary>Host of each part, by its number; −1 where there is no part.</summary>
    public int[] HostOf { get; }

    /// <summary>Whether an opening joins two hosts across a face of the same kind, so that it counts as open length between them.</summary>
    /// <param name="opening">The opening.</param>
    public bool JoinsNeighbours(FaceOpening opening)
    {
        int before = HostOf[opening.PartBefore], beyond = HostOf[opening.PartBeyond];
        if (before == beyond) return false;
        UniformGrid grid = squares.Grid;
        return opening.IsEast
            ? beyond == before + 1 && grid.ColumnOf(beyond) != 0
            : beyond == before + grid.Columns;
    }

    private List<FaceOpening> OpeningsOf(int part)
    {
        if (!openingsOf.TryGetValue(part, out List<FaceOpening>? openings)) openingsOf[part] = openings = [];
        return openings;
    }

    private void Resolve(double threshold)
    {
        for (int square = 0; square < squares.Grid.CellCount; square++) HostOf[square] = squares.IsWhole(square) ? square : Outside;
        var waiting = new List<SquarePart>();
        foreach (SquarePart part in squares.Parts)
        {
            bool keeps = part.Number == part.Square && (part.Area >= threshold || keptAnyway.Contains(part.Number));
            HostOf[part.Number] = keeps ? part.Square : Open;
            if (!keeps) waiting.Add(part);
        }

        while (waiting.Count > 0)
        {
            // All choices of a round are made from its start, so that the order of the squares plays no role.
            var chosen = waiting.ConvertAll(p => (Part: p, Host: LongestNeighbour(p.Number)));
            if (chosen.TrueForAll(c => c.Host == Open))
            {
                // Cut off from everything: only a region that touches itself in a point gets here.
                foreach (SquarePart part in waiting) HostOf[part.Number] = HostOf[part.Square] >= 0 ? HostOf[part.Square] : part.Square;
                break;
            }

            foreach ((SquarePart part, int host) in chosen) HostOf[part.Number] = host;
            waiting.RemoveAll(p => HostOf[p.Number] != Open);
        }
    }

    private int LongestNeighbour(int part)
    {
        int best = Open;
        double bestLength = 0;
        foreach (FaceOpening opening in OpeningsOf(part))
        {
            int host = HostOf[opening.Across(part)];
            if (host == Open) continue;
            double length = 0;
            foreach (FaceOpening other in OpeningsOf(part))
            {
                if (HostOf[other.Across(part)] == host) length += other.Length;
            }

            if (length > bestLength) (best, bestLength) = (host, length);
        }

        return best;
    }

    private bool KeepCutPassages()
    {
        var walk = new HostWalk(squares, this);
        bool keptMore = false;
        foreach (FaceOpening opening in squares.Openings)
        {
            int before = HostOf[opening.PartBefore], beyond = HostOf[opening.PartBeyond];
            if (before == beyond || JoinsNeighbours(opening) || walk.AreNear(before, beyond)) continue;
            foreach (int part in new[] { opening.PartBefore, opening.PartBeyond })
            {
                if (part < squares.Grid.CellCount && HostOf[part] != part) keptMore |= keptAnyway.Add(part);
            }
        }

        return keptMore;
    }
}
