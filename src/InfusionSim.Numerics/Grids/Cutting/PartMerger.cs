namespace InfusionSim.Numerics.Grids.Cutting;

/// <summary>Gives each small part of a cut square to a neighbour, so that one square is one unknown and no unknown is a sliver.</summary>
/// <remarks>
/// The largest part of a square keeps the square when it holds at least <see cref="SmallestShare"/> of it. Every other part joins the
/// host with which it shares the longest open face, in rounds from the hosts outwards, so that chains of slivers end in one host.
/// An open face between two parts is given up when their hosts are no neighbours of that kind, which does no harm while the hosts reach each
/// other in a few steps. Where they do not, a passage would be cut. Then, in this order: a sliver in the passage keeps its square after all; a
/// smaller part gets the square instead of the largest; a dead end joins the host across. What is left is told as lost.
/// </remarks>
internal sealed class PartMerger
{
    /// <summary>Share of a square below which its largest part is a sliver [-]; our choice, large enough for the conditioning.</summary>
    /// <remarks>
    /// A sliver that joins a host gives up an open face of √(2 × share) of a square where the edge runs at 45°: at 0.02 a strip of 20 squares lost 1
    /// % of its width there, at 0.002 it loses 0.05 %.
    /// </remarks>
    public const double SmallestShare = 0.002;

    // Swapping and joining are tried one by one; a drawing that needs more tries than this is too fine for its squares.
    private const int MostTries = 200, MostPartsTried = 200_000;
    private const int Open = -2, Outside = -1, NoKeeper = -1;
    // Open lengths closer than this are the same but for rounding [squares].
    private const double Same = 1e-9;
    private const int SameDigits = 9;
    private readonly CutSquares squares;
    private readonly bool isWide;
    private readonly Dictionary<int, List<FaceOpening>> openingsOf = [];
    private readonly Dictionary<int, int> keeperOf = [];

    /// <summary>Merges the parts.</summary>
    /// <param name="squares">The cut region.</param>
    /// <param name="isWide">Whether the region is wide, as <see cref="Geometry.Region.IsWide"/> tells it.</param>
    public PartMerger(CutSquares squares, bool isWide)
    {
        this.squares = squares;
        this.isWide = isWide;
        HostOf = new int[squares.NumberCount];
        Array.Fill(HostOf, Outside);
        bool anyWhole = false;
        for (int square = 0; square < squares.Grid.CellCount; square++)
        {
            if (!squares.IsWhole(square)) continue;
            HostOf[square] = square;
            anyWhole = true;
        }

        foreach (FaceOpening opening in squares.Openings)
        {
            OpeningsOf(opening.PartBefore).Add(opening);
            OpeningsOf(opening.PartBeyond).Add(opening);
        }

        // A region that is nothing but slivers keeps them all.
        bool anyLarge = anyWhole || squares.Parts.Exists(p => p.Area >= SmallestShare);
        foreach (SquarePart part in squares.Parts)
        {
            if (part.Number == part.Square) keeperOf[part.Square] = part.Area >= SmallestShare || !anyLarge ? part.Number : NoKeeper;
        }

        Resolve();
        while (KeepSliversIn(FindLost())) Resolve();
        Lost = FindLost();
        int triesLeft = Math.Min(MostTries, MostPartsTried / Math.Max(1, squares.Parts.Count));
        while (Lost.Count > 0 && triesLeft > 0 && TryToReopen(ref triesLeft)) Lost = FindLost();
    }

    /// <summary>Openings whose two sides reach each other only by a long way round, or not at all; mostly none.</summary>
    public List<FaceOpening> Lost { get; private set; }

    /// <summary>Cell that owns each square: itself, the host of its largest part, or −1 outside; [rows × columns], x fastest.</summary>
    public int[] OwnerOfSquares()
    {
        int[] owners = HostOf[..squares.Grid.CellCount];
        foreach ((int square, int keeper) in keeperOf)
        {
            if (keeper != NoKeeper) owners[square] = square;
        }

        return owners;
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

    private void Resolve()
    {
        var waiting = new List<SquarePart>();
        foreach (SquarePart part in squares.Parts)
        {
            bool keeps = keeperOf[part.Square] == part.Number;
            HostOf[part.Number] = keeps ? part.Square : Open;
            if (!keeps) waiting.Add(part);
        }

        while (waiting.Count > 0)
        {
            // All choices of a round are made from its start, so that the order of the squares plays no role.
            var chosen = waiting.ConvertAll(p => (Part: p, Host: LongestNeighbour(p)));
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

    private int LongestNeighbour(SquarePart part)
    {
        (int Host, double Length, (double Distance, int Long, int Short) Place) best = (Open, -1, default);
        List<FaceOpening> openings = OpeningsOf(part.Number);
        foreach (FaceOpening opening in openings)
        {
            int host = HostOf[opening.Across(part.Number)];
            if (host == Open || host == best.Host) continue;
            double length = 0;
            foreach (FaceOpening other in openings)
            {
                if (HostOf[other.Across(part.Number)] == host) length += other.Length;
            }

            // Two faces that are open over their whole length tie; the host nearer to the part's middle takes it.
            (double Distance, int Long, int Short) place = PlaceOf(host, part);
            if (length > best.Length + Same || (length > best.Length - Same && place.CompareTo(best.Place) < 0)) best = (host, length, place);
        }

        return best.Host;
    }

    // How far off a host lies and, where an edge at 45° makes two equally far, on which side, so that the answer is the same when x and y are exchanged.
    private (double Distance, int Long, int Short) PlaceOf(int host, SquarePart part)
    {
        UniformGrid grid = squares.Grid;
        int right = grid.ColumnOf(host) - grid.ColumnOf(part.Square), up = grid.RowOf(host) - grid.RowOf(part.Square);
        double u = part.Area > 0 ? right - part.MomentU / part.Area : right, v = part.Area > 0 ? up - part.MomentV / part.Area : up;
        double distance = Math.Round(Math.Sqrt(u * u + v * v), SameDigits);
        return isWide ? (distance, right, up) : (distance, up, right);
    }

    private List<FaceOpening> FindLost()
    {
        var walk = new HostWalk(squares, this);
        return squares.Openings.FindAll(o => HostOf[o.PartBefore] != HostOf[o.PartBeyond] && !JoinsNeighbours(o) && !walk.AreNear(HostOf[o.PartBefore], HostOf[o.PartBeyond]));
    }

    private bool KeepSliversIn(List<FaceOpening> lost)
    {
        bool keptMore = false;
        foreach (FaceOpening opening in lost)
        {
            foreach (int part in (ReadOnlySpan<int>)[opening.PartBefore, opening.PartBeyond])
            {
                if (!keeperOf.TryGetValue(part, out int keeper) || keeper != NoKeeper) continue;
                keeperOf[part] = part;
                keptMore = true;
            }
        }

        return keptMore;
    }

    private bool TryToReopen(ref int triesLeft)
    {
        (double Lost, double Moved, double Area, SquarePart? Part) best = (Lost.Sum(o => o.Length), 0, 0, null);
        HashSet<int> beside = [.. Lost.SelectMany(o => new[] { o.PartBefore, o.PartBeyond })];
        foreach (SquarePart part in squares.Parts)
        {
            if (!beside.Contains(part.Number) || triesLeft <= 0) continue;
            int former = keeperOf[part.Square];
            keeperOf[part.Square] = former == part.Number ? NoKeeper : part.Number;
            triesLeft--;
            Resolve();
            double lost = FindLost().Sum(o => o.Length);
            double moved = former == NoKeeper ? 0 : squares.Parts.Find(p => p.Number == former)!.Area;
            // Of equally good ways the one that moves least area, so that a mirrored drawing is cut into mirrored cells.
            bool isAsGood = best.Part is not null && lost <= best.Lost + Same && (moved < best.Moved || (moved == best.Moved && part.Area > best.Area));
            if (lost < best.Lost - Same || isAsGood) best = (lost, moved, part.Area, part);
            keeperOf[part.Square] = former;
        }

        if (best.Part is { } chosen) keeperOf[chosen.Square] = keeperOf[chosen.Square] == chosen.Number ? NoKeeper : chosen.Number;
        Resolve();
        return best.Part is not null;
    }
}
