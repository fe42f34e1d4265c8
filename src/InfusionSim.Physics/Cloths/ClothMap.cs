using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Panels;

namespace InfusionSim.Physics.Cloths;

/// <summary>Which cloth lies where: where zones overlap the last one named decides alone.</summary>
public sealed class ClothMap
{
    // A place on a slanted edge is hardly ever exactly on it in doubles, and a drawing is no finer than a hundredth of a millimetre.
    private const double OnEdge = 1.1e-5;

    private readonly IReadOnlyList<Zone> zones;
    private readonly ClothTensor[] cloths;
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
        shapes = [.. zones.Select(zone => zone.Area is Ring area ? new ZoneShape(area) : null)];
    }

    /// <summary>The zones in the order they are named.</summary>
    public IReadOnlyList<Zone> Zones => zones;

    /// <summary>Whether places of the region may lie in no zone.</summary>
    public bool MayBeBare => bareWithin is not null;

    /// <summary>Numbers of a zone.</summary>
    /// <param name="zone">Index of the zone.</param>
    public ClothTensor this[int zone] => cloths[zone];

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
    /// <remarks>Parts of the way that leave the zones, as beyond a slanted edge, count like the mean of the rest; a bare part inside the region lets nothing pass.</remarks>
    /// <param name="from">Where it begins [m].</param>
    /// <param name="to">Where it ends [m].</param>
    public double Resistance(Point2 from, Point2 to)
    {
        double length = from.DistanceTo(to);
        if (length == 0) return 0;
        double alongX = (to.X - from.X) / length, alongY = (to.Y - from.Y) / length;
        double sum = 0, covered = 0, before = 0;
        foreach (double after in Crossings(from, to))
        {
            double middle = (before + after) / 2;
            if (after > before)
            {
                Point2 place = new(from.X + middle * (to.X - from.X), from.Y + middle * (to.Y - from.Y));
                int zone = ZoneAt(place);
                if (zone >= 0)
                {
                    sum += (after - before) / cloths[zone].ConductanceAlong(alongX, alongY);
                    covered += after - before;
                }
                else if (IsBare(place, (after - before) * length))
                {
                    return double.PositiveInfinity;
                }
            }

            before = after;
        }

        if (covered == 0 && MayBeBare) return double.PositiveInfinity;
        return covered > 0 ? sum / covered * length : throw Uncovered(from);
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

    // Shares of the way at which it crosses edges of zones, and its end, in order. Called for many short ways, most of which cross nothing.
    private List<double> Crossings(Point2 from, Point2 to)
    {
        List<double> crossings = [1];
        foreach (ZoneShape? shape in shapes) shape?.AddCrossings(crossings, from, to);
        if (crossings.Count > 1) crossings.Sort();
        return crossings;
    }
}
