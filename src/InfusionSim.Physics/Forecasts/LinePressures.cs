using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Network;
using InfusionSim.Physics.Panels;

namespace InfusionSim.Physics.Forecasts;

/// <summary>Reads the pressure along the lines that have nodes.</summary>
internal sealed class LinePressures
{
    private const double Before = 0.99;

    private readonly FillProblem problem;
    private readonly double[] pressure;

    private LinePressures(FillProblem problem, double[] pressure)
    {
        this.problem = problem;
        this.pressure = pressure;
    }

    /// <summary>The lines of feeds and of vents, each in the panel's order; null for a line whose pressure is fixed, and for one that is dry.</summary>
    /// <param name="map">Where the resin goes.</param>
    /// <param name="end">Drive clock at the end [-].</param>
    /// <param name="cancellation">Stops the work.</param>
    public static (IReadOnlyList<LineForecast?> Feeds, IReadOnlyList<LineForecast?> Vents) Of(FillMap map, double end, CancellationToken cancellation)
    {
        FeedNetwork network = map.Problem.Network;
        bool isFixed = network.Feeds.All(static chain => chain is null) && network.Vents.All(static chain => chain is null);
        if (isFixed || end == 0 || map.Problem.Panel is not Panel panel) return (new LineForecast?[map.Problem.Feeds.Count], new LineForecast?[map.Problem.Vents.Count]);
        FillState state = map.StateAt(Before * end, withPressure: true, cancellation);

        // What is not full holds gas, which is at its own pressure.
        LinePressures lines = new(map.Problem, [.. state.Pressure!.Select((pressure, node) => state.Saturation[node] < 1 ? 0 : pressure)]);
        return (
            [.. panel.Feeds.Select((feed, k) => network.Feeds[k] is NodeChain chain ? lines.Along(chain, feed.Path, feed.Hose, k, isFeed: true) : null)],
            [.. panel.Vents.Select((vent, k) => network.Vents[k] is NodeChain chain ? lines.Along(chain, vent.Path, vent.Hose, k, isFeed: false) : null)]);
    }

    private LineForecast? Along(NodeChain chain, LinePath path, Hose? hose, int line, bool isFeed)
    {
        double[] held = pressure[chain.First..(chain.First + chain.Count)];
        if (held.All(static value => value == 0)) return null;
        double volume = problem.Network.Nodes
            .Where(node => node.Line == line && (isFeed ? node.Part is LinePart.Feed or LinePart.FeedHose : node.Part is LinePart.Vent or LinePart.VentHose))
            .Sum(static node => node.Volume);
        double joint = hose?.JoinsAt is { } place ? chain.StationNear(place) : 0;
        double first = joint == 0 ? Beyond(held[0], held) : held[0], last = joint == chain.Length ? Beyond(held[^1], [.. held.Reverse()]) : held[^1];
        double start = joint == 0 ? first : joint == chain.Length ? last : pressure[chain.NodeAt(joint)];

        // Of a feed line the weaker end counts, of a vent line the one that holds more pressure back.
        bool isFirst = joint == chain.Length || (joint > 0 && (isFeed ? first < last : first > last));
        IEnumerable<LinePoint> nodes = held.Select((value, k) => new LinePoint(chain.StationOf(chain.First + k), value));
        LinePoint[] points = chain.Length == 0 ? [.. nodes] : [new(0, first), .. nodes, new(chain.Length, last)];
        return new(volume, points, start, isFirst ? first : last, isFirst ? path.Points[0] : path.Points[^1]);
    }

    // Half a node before the first the pressure goes on as it falls from there; half a node after the last hardly anything flows and it runs out level.
    private static double Beyond(double nearest, double[] held) => held.Length > 1 ? nearest + (nearest - held[1]) / 2 : nearest;
}
