using InfusionSim.Numerics.Geometry;
using InfusionSim.Numerics.Lattice;
using InfusionSim.Physics.Panels;

namespace InfusionSim.Physics.Cloths;

/// <summary>Which cloth lies where: where zones overlap the last one named decides alone.</summary>
public sealed class ClothMap
{
    // A place on a slanted edge is hardly ever exactly on it in doubles, and a drawing is no finer than a hundredth of a millimetre.
    private const double OnEdge = 1.1e-5;

    // Share of the tensor's trace that an open face passes at least. The stencil of turned cloth may lead through no face of a row at all; air, and
    // whatever else asks
    // which cells touch, goes by faces, and a line that parts them must be seen to.
    private const double LeastShare = 1e-12;

    private readonly IReadOnlyList<Zone> zones;
    private readonly ClothTensor[] cloths;
    private readonly SellingStencil[] stencils;
    private readonly ZoneShape?[] shapes;
    private readonly RegionLocator? bareWithin;

    /// <summary>Makes the map of some zones.</summary>
    /// <param name="zones">The zones in the order they are named, at least one.</param>
    /// <param name="bareWithin">The panel's region for a layer that covers a part of it only: where none of the zones lies it is bare and nothing flows. Null when every place has a zone.</param>
    public ClothMap(IReadOnlyList<Zone> zones, Region? bareWithin = null)
    {
        ArgumentNullException.ThrowIfNull(zones);
        this.zones = zones;
        this.bareWithin = bareWithin is null ? null : new RegionLocator(bareWithin);
        cloths = [.. zones.Select(ClothTensor.Of)];
        stencils = [.. cloths.Select(cloth => SellingStencil.Of(cloth.Tensor))];
        SlantedArms = [.. stencils.SelectMany(stencil => stencil.Arms).Where(arm => arm.SquaredLength > 1).Select(arm => (arm.Right, arm.Up)).Distinct()];
        shapes = [.. zones.Select(zone => zone.Area is Ring area ? new ZoneShape(area) : null)];
    }

    /// <summary>The zones in the order they are named.</summary>
    public IReadOnlyList<Zone> Zones => zones;

    /// <summary>Whether places of the region may lie in no zone.</summary>
    public bool MayBeBare => bareWithin is not null;

    /// <summary>
    /// Offsets to further cells, beside those along the rows and columns, that the ways of at least one zone lead to: columns to the right and rows
    /// above [-]; none where all axes lie along x and y.
    /// </summary>
    public IReadOnlyList<(int Right, int Up)> SlantedArms { get; }

    /// <summary>Numbers of a zone.</summary>
    /// <param name="zone">Index of the zone.</param>
    public ClothTensor this[int zone] => cloths[zone];

    /// <summary>Ways between cells that conduct like a zone.</summary>
    /// <param name="zone">Index of the zone.</param>
    public SellingStencil StencilOf(int zone) => stencils[zone];

    /// <summary>Conductance of a way between cells that lies in one zone, per width over length [m³]; 0 where the zone's stencil has no such way.</summary>
    /// <param name="zone">Index of the zone.</param>
    /// <param name="right">Columns to the right that it leads [-].</param>
    /// <param name="up">Rows above that it leads [-].</param>
    public double WeightIn(int zone, int right, int up)
    {
        double weight = stencils[zone].WeightOf(right, up);
        return right * right + up * up == 1 ? Math.Max(weight, LeastShare * cloths[zone].Tensor.Trace) : weight;
    }

    /// <summary>Index of the zone that decides at a place; −1 where there is none.</summary>
    /// <param name="place">The place [m].</param>
    public int ZoneAt(Point2 place)
    {
        for (int zone = zones.Count - 1; zone >= 0; zone--)
        {
            if (shapes[zone]?.Contains(place) ?? true) return zone;
        }

        return -1;
    }

    /// <summary>Numbers of the cloth at a place, or beside one that lies on the edge of a zone but for rounding; all 0 where it may be bare and is.</summary>
    /// <param name="place">The place [m].</param>
    /// <exception cref="InvalidOperationException">When no zone covers it and it may not be bare.</exception>
    public ClothTensor At(Point2 place)
    {
        int zone = ZoneAt(place);
        if (zone < 0) zone = ZoneBeside(place);
        if (zone >= 0) return cloths[zone];
        return MayBeBare ? default : throw Uncovered(place);
    }

    /// <summary>Resistance of a straight way, per width: ∫ ds / (n·K·n times thickness) [1/m²].</summary>
    /// <remarks>
    /// Parts of the way that leave the zones, as beyond a slanted edge, count like the mean of the rest; a bare part inside the region lets nothing
    /// pass.
    /// </remarks>
    /// <param name="from">Where it begins [m].</param>
    /// <param name="to">Where it ends [m].</param>
    public double Resistance(Point2 from, Point2 to) => Resistance(from, to, (zone, x, y) => cloths[zone].ConductanceAlong(x, y));

    /// <summary>
    /// Resistance of a straight way, per width, for what flows along the rows and columns alone: all of it where the axes of a zone lie along x and y
    /// [1/m²].
    /// </summary>
    /// <remarks>As <see cref="Resistance(Point2, Point2)"/>, with the weights of the ways to the next cells in place of the tensor.</remarks>
    /// <param name="from">Where it begins [m].</param>
    /// <param name="to">Where it ends [m].</param>
    public double ResistanceOfStraightArms(Point2 from, Point2 to) =>
        Resistance(from, to, (zone, x, y) => cloths[zone].IsAligned ? cloths[zone].ConductanceAlong(x, y) : WeightIn(zone, 1, 0) * x * x + WeightIn(zone, 0, 1) * y * y);

    /// <summary>Conductance of a way between cells along a direction of the stencils, per width over length [m³].</summary>
    /// <remarks>
    /// In one zone its weight. Through several, with shares f of the way and n square to the edge it crosses, (Σ f w/ν) / Σ (f/ν) with ν = n·K·n
    /// times thickness: the ways
    /// over the edge then pass what zones in series do, Σ w (e·n)² = 1/Σ (f/ν), whatever directions the stencil of each zone has (derived). Where the
    /// axes of all zones met
    /// lie along x and y this is the resistance in series. A bare part inside the region lets nothing pass.
    /// </remarks>
    /// <param name="from">Where it begins [m].</param>
    /// <param name="to">Where it ends [m].</param>
    /// <param name="right">Columns to the right that the direction leads [-].</param>
    /// <param name="up">Rows above that it leads [-].</param>
    public double WeightAlong(Point2 from, Point2 to, int right, int up)
    {
        List<WayPart> parts = [];
        if (!Cover(parts, from, to)) return 0;
        int first = parts[0].Zone;
        if (parts.TrueForAll(part => part.Zone == first)) return WeightIn(first, right, up);
        double length = from.DistanceTo(to), nx = (to.X - from.X) / length, ny = (to.Y - from.Y) / length;
        if (!parts.TrueForAll(part => cloths[part.Zone].IsAligned)) (nx, ny) = Across(parts, nx, ny);
        double carried = 0, resistance = 0;
        foreach (WayPart part in parts)
        {
            double across = cloths[part.Zone].ConductanceAlong(nx, ny);
            if (!(across > 0)) return 0;
            carried += part.Share * WeightIn(part.Zone, right, up) / across;
            resistance += part.Share / across;
        }

        return carried / resistance;
    }

    // Square to the edge, among those where the zone changes, that lies nearest to the middle of the way; where two lie equally near, between them.
    private static (double X, double Y) Across(List<WayPart> parts, double alongX, double alongY)
    {
        const double EquallyNear = 1e-9;
        double least = double.PositiveInfinity, x = 0, y = 0;
        for (int k = 1; k < parts.Count; k++)
        {
            if (parts[k].Zone != parts[k - 1].Zone) least = Math.Min(least, Math.Abs(parts[k].Start.Share - 0.5));
        }

        for (int k = 1; k < parts.Count; k++)
        {
            ZoneCrossing crossing = parts[k].Start;
            if (parts[k].Zone == parts[k - 1].Zone || Math.Abs(crossing.Share - 0.5) > least + EquallyNear) continue;
            double sign = crossing.AcrossX * alongX + crossing.AcrossY * alongY < 0 ? -1 : 1;
            x += sign * crossing.AcrossX;
            y += sign * crossing.AcrossY;
        }

        double size = Math.Sqrt(x * x + y * y);
        return size > EquallyNear ? (x / size, y / size) : (alongX, alongY);
    }

    private double Resistance(Point2 from, Point2 to, Func<int, double, double, double> conductance)
    {
        double length = from.DistanceTo(to);
        if (length == 0) return 0;
        double alongX = (to.X - from.X) / length, alongY = (to.Y - from.Y) / length, sum = 0, covered = 0;
        List<WayPart> parts = [];
        if (!Cover(parts, from, to)) return double.PositiveInfinity;
        foreach (WayPart part in parts)
        {
            sum += part.Share / conductance(part.Zone, alongX, alongY);
            covered += part.Share;
        }

        return sum / covered * length;
    }

    // The covered parts of a way, at least one; false where a bare part lets nothing pass.
    private bool Cover(List<WayPart> parts, Point2 from, Point2 to)
    {
        double length = from.DistanceTo(to);
        ZoneCrossing start = new(0, 0, 0);
        foreach (ZoneCrossing end in Crossings(from, to))
        {
            double share = end.Share - start.Share;
            if (share > 0)
            {
                // Not the middle: that is where a way touches a corner without crossing an edge, and the corner belongs to the zone.
                int zone = ZoneOn(start.Share + share / 4), second = ZoneOn(start.Share + 3 * share / 4);
                if (!Add(zone, zone == second ? share : share / 2, start)) return false;
                if (zone != second && !Add(second, share / 2, new(start.Share + share / 2, 0, 0))) return false;
            }

            start = end;
        }

        if (parts.Count > 0) return true;
        return MayBeBare ? false : throw Uncovered(from);

        Point2 On(double share) => new(from.X + share * (to.X - from.X), from.Y + share * (to.Y - from.Y));

        int ZoneOn(double share) => ZoneAt(On(share));

        bool Add(int zone, double share, ZoneCrossing at)
        {
            if (zone >= 0) parts.Add(new(zone, share, at));
            return zone >= 0 || !IsBare(On(at.Share + share / 2), share * length);
        }
    }

    internal static InvalidOperationException Uncovered(Point2 place) => new(
        $"No zone covers the cloth at x = {place.X * 1000:0.###} mm, y = {place.Y * 1000:0.###} mm; every place inside the outline needs one.");

    private bool IsBare(Point2 place, double length) => bareWithin is not null && length > OnEdge && bareWithin.Contains(place);

    private int ZoneBeside(Point2 place)
    {
        for (int zone = zones.Count - 1; zone >= 0; zone--)
        {
            if (zones[zone].Area is Ring area && DistanceToEdge(area, place) <= OnEdge) return zone;
        }

        return -1;
    }

    private static double DistanceToEdge(Ring ring, Point2 place)
    {
        double least = double.PositiveInfinity;
        Point2 a = ring.Corners[^1];
        foreach (Point2 b in ring.Corners)
        {
            double x = b.X - a.X, y = b.Y - a.Y, square = x * x + y * y;
            double along = square == 0 ? 0 : Math.Clamp(((place.X - a.X) * x + (place.Y - a.Y) * y) / square, 0, 1);
            least = Math.Min(least, place.DistanceTo(new(a.X + along * x, a.Y + along * y)));
            a = b;
        }

        return least;
    }

    // Where the way crosses edges of zones, and its end, in order. Called for many short ways, most of which cross nothing.
    private List<ZoneCrossing> Crossings(Point2 from, Point2 to)
    {
        List<ZoneCrossing> crossings = [new(1, 0, 0)];
        foreach (ZoneShape? shape in shapes) shape?.AddCrossings(crossings, from, to);
        if (crossings.Count > 1) crossings.Sort(static (a, b) => a.Share.CompareTo(b.Share));
        return crossings;
    }

    private readonly record struct WayPart(int Zone, double Share, ZoneCrossing Start);
}
