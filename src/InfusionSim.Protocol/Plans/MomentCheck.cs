using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.Json;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Plans;

/// <summary>Checks when something is to be done: one moment, and a place that there is.</summary>
internal static class MomentCheck
{
    private const string Choices = "give atMin, whenReached or whenFull";

    /// <summary>Checks a moment.</summary>
    /// <param name="when">The moment; null where a rule names none.</param>
    /// <param name="path">Where it stands.</param>
    /// <param name="plan">The plan with its names filled in.</param>
    /// <param name="faults">Takes the faults.</param>
    public static void Run(Moment? when, string path, InfusionPlan plan, FaultList faults)
    {
        if (faults.HasUnder(path)) return;
        string[] given = [.. Given(when)];
        if (given.Length == 0)
            faults.Add(path, $"{path} names no moment; {Choices}, for example \"whenReached\": \"M1\".");
        else if (given.Length > 1)
            faults.Add(path, $"{path} gives {string.Join(" and ", given)}; give one of them.");
        else if (when!.WhenReached.Length > 0)
            CheckPlace(when.WhenReached, path + ".whenReached", plan, faults);
    }

    private static IEnumerable<string> Given(Moment? when)
    {
        if (when is null) yield break;
        if (when.HasAtMin) yield return "atMin";
        if (when.WhenReached.Length > 0) yield return "whenReached";
        if (when is { HasWhenFull: true, WhenFull: true }) yield return "whenFull";
    }

    private static void CheckPlace(string name, string path, InfusionPlan plan, FaultList faults)
    {
        bool isMark = plan.TimingMarks.Any(mark => mark.Name == name), isVent = plan.Vents.Any(vent => vent.Name == name);
        if (isMark != isVent) return;
        string what = $"{path} is '{ValueReader.Shorten(name)}'";
        if (isMark) faults.Add(path, $"{what}, and both a timing mark and a vent are called so; give one of them another name.");
        else if (plan.Feeds.Any(feed => feed.Name == name)) faults.Add(path, $"{what}, a feed: resin comes from there. Name a timing mark or a vent.");
        else faults.Add(path, $"{what}, and no timing mark or vent is called so{Nearest(name, plan)}");
    }

    private static string Nearest(string name, InfusionPlan plan)
    {
        string[] known = [.. plan.TimingMarks.Select(static mark => mark.Name), .. plan.Vents.Select(static vent => vent.Name)];
        if (known.Length == 0) return ": the plan has none. Put a timing mark where the resin is to be waited for: timingMarks.";
        return NearestKey.Of(name, known) is string nearest
            ? $"; did you mean '{ValueReader.Shorten(nearest)}'?"
            : $"; there are {string.Join(", ", known.Take(6).Select(one => $"'{ValueReader.Shorten(one)}'"))}{(known.Length > 6 ? " …" : "")}.";
    }
}
