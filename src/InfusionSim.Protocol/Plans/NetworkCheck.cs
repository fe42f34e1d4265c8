using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Panels;
using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.Json;
using InfusionSim.Protocol.Units;
using InfusionSim.Protocol.V1;
using Hose = InfusionSim.Protocol.V1.Hose;
using Path = InfusionSim.Protocol.V1.Path;
using Pot = InfusionSim.Protocol.V1.Pot;

namespace InfusionSim.Protocol.Plans;

/// <summary>Checks how pots, hoses and lines hang together.</summary>
internal static class NetworkCheck
{
    /// <summary>Checks a plan whose defaults are filled in.</summary>
    public static void Run(InfusionPlan plan, FaultList faults, List<string> warnings)
    {
        for (int k = 0; k < plan.Feeds.Count; k++)
        {
            V1.Feed feed = plan.Feeds[k];
            CheckLine(feed.Path, feed.HasBoreMm, feed.Hose, $"feed '{ValueReader.Shorten(feed.Name)}'", $"feeds[{k}]", faults);
            if (feed.Pot.Length > 0 && plan.Pots.All(pot => pot.Name != feed.Pot)) faults.Add($"feeds[{k}].pot", UnknownPot(feed.Pot, plan, k));
        }

        for (int k = 0; k < plan.Vents.Count; k++)
        {
            V1.Vent vent = plan.Vents[k];
            CheckLine(vent.Path, vent.HasBoreMm, vent.Hose, $"vent '{ValueReader.Shorten(vent.Name)}'", $"vents[{k}]", faults);
            if (vent.Hose is { Primed: true })
                faults.Add($"vents[{k}].hose.primed", $"vents[{k}].hose.primed is true; a hose on a vent begins empty, or no air could leave through it. Leave primed out.");
        }

        for (int k = 0; k < plan.Pots.Count; k++) CheckPot(plan.Pots[k], plan, $"pots[{k}]", faults, warnings);
    }

    private static void CheckPot(Pot pot, InfusionPlan plan, string path, FaultList faults, List<string> warnings)
    {
        if (plan.Feeds.All(feed => feed.Pot != pot.Name)) warnings.Add($"pot '{ValueReader.Shorten(pot.Name)}' serves no feed; name it in the pot of a feed, or take it out.");
        if (pot.Hose?.JoinsAt is not null)
            faults.Add(path + ".hose.joinsAt", $"{path}.hose.joinsAt is given; the hose of a pot ends at its T-piece. Give joinsAt in the hose of a feed.");
    }

    private static void CheckLine(Path? path, bool hasBore, Hose? hose, string name, string place, FaultList faults)
    {
        if (path is not { Points.Count: > 0 } || faults.HasUnder(place + ".path")) return;
        LinePath line = PlanMapping.ToPath(path);
        if (hasBore && line.IsFitting)
            faults.Add(place + ".boreMm", $"{name} is a fitting and has no length to lose pressure along; leave boreMm out, or give a hose its bore: {place}.hose.boreMm.");
        if (hose?.JoinsAt is not V1.Point joins || faults.HasUnder(place + ".hose.joinsAt")) return;
        Point2 at = PlanMapping.ToPoint(joins);
        (double distance, _) = PathDistance.Between(line, new LinePath([at]));
        double distanceMm = UnitConversion.MmFromMetres(distance);
        if (distanceMm <= PlanLimits.LineReachMm) return;
        Point2 nearest = NearestOn(line, at);
        faults.Add(place + ".hose.joinsAt", $"the hose of {name} joins at {RingCheck.Say(at)}, {Numbers.Say(Numbers.Rounded(distanceMm, 3))} mm beside its line; it must be a place on the line. The nearest is {RingCheck.Say(nearest)}.");
    }

    private static Point2 NearestOn(LinePath line, Point2 at)
    {
        Point2 nearest = line.Points[0];
        for (int k = 1; k < line.Points.Count; k++)
        {
            Point2 candidate = PathDistance.NearestOn(line.Points[k - 1], line.Points[k], at);
            if (candidate.DistanceTo(at) < nearest.DistanceTo(at)) nearest = candidate;
        }

        return nearest;
    }

    private static string UnknownPot(string name, InfusionPlan plan, int feed)
    {
        string what = $"feeds[{feed}].pot is '{ValueReader.Shorten(name)}', and no pot is called so";
        if (plan.Pots.Count == 0) return $"{what}: the plan has no pots. Give it in pots, or leave pot out for a pot of the feed's own.";
        return NearestKey.Of(name, plan.Pots.Select(pot => pot.Name)) is string nearest
            ? $"{what}; did you mean '{ValueReader.Shorten(nearest)}'?"
            : $"{what}; there are {string.Join(", ", plan.Pots.Take(6).Select(pot => $"'{ValueReader.Shorten(pot.Name)}'"))}{(plan.Pots.Count > 6 ? " …" : "")}.";
    }
}
