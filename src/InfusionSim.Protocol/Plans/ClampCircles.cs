using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Plans;

/// <summary>Finds vents that wait for each other in a circle: a shut vent shows no resin, so none of them would ever open.</summary>
/// <remarks>A line that waits for a timing mark which only it could reach is no such circle: that it never opens is a forecast.</remarks>
internal static class ClampCircles
{
    /// <summary>Checks the vents of a plan; each circle is told once, at its first vent.</summary>
    public static void Run(ClampedLine[] vents, FaultList faults)
    {
        var told = new HashSet<string>(StringComparer.Ordinal);
        foreach (ClampedLine vent in vents)
        {
            if (told.Contains(vent.Name) || faults.HasUnder(vent.Path + ".opens") || CircleFrom(vent, vents) is not { Count: > 0 } circle) continue;
            told.UnionWith(circle.Select(static one => one.Name));
            string waits = string.Join(", ", circle.Select(static one => $"{one.Name} opens when resin shows in {one.Opens!.WhenReached}"));
            string what = circle.Count == 1 ? "it waits for itself" : "they wait for each other";
            faults.Add(vent.Path + ".opens", $"{waits}: {what}, and a shut vent shows no resin. Let one of them wait for a timing mark or a minute.");
        }
    }

    // Each vent waits for one other at most, so the way is one line; it comes back to its beginning or not.
    private static List<ClampedLine> CircleFrom(ClampedLine first, ClampedLine[] vents)
    {
        List<ClampedLine> way = [];
        ClampedLine? at = first;
        while (at is { Opens: Moment { WhenReached.Length: > 0 } opens } && !way.Contains(at))
        {
            way.Add(at);
            at = vents.FirstOrDefault(vent => vent.Name == opens.WhenReached);
        }

        return at == first && way.Count > 0 ? way : [];
    }
}
