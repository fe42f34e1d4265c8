using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.Resins;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Plans;

/// <summary>Finds every fault of a plan in one pass: what a number may be, what must be there, what must lie where.</summary>
public static class PlanChecker
{
    private const int LongestWarning = 800;

    /// <summary>Checks a plan and fills in its defaults.</summary>
    /// <param name="plan">The plan; not changed. Null is a missing plan.</param>
    /// <param name="found">Faults that were met while it was read; they come first, and nothing is said twice about their places.</param>
    public static PlanCheck Check(InfusionPlan? plan, IReadOnlyList<Fault>? found = null)
    {
        var faults = new FaultList();
        var warnings = new List<string>();
        if (found is not null) faults.AddRange(found);
        if (found is not null && IsUnread(found)) return new PlanCheck(plan ?? new InfusionPlan(), faults.ToList(), warnings);
        if (plan is null)
        {
            faults.Add("plan", "plan is missing: there is nothing to compute.");
            return new PlanCheck(new InfusionPlan(), faults.ToList(), warnings);
        }

        if (!SizeCheck.Passes(plan, faults)) return new PlanCheck(plan, faults.ToList(), warnings);

        InfusionPlan filled = plan.Clone();
        PresenceCheck.Run(filled, faults);
        NumberCheck.Run(filled, faults);
        TextCheck.Run(filled, faults);
        PlanDefaults.FillIn(filled);
        NameCheck.Run(filled, faults);
        AnisotropyCheck.Run(filled, faults);
        CorePassages.Run(filled, faults);
        NetworkCheck.Run(filled, faults, warnings);
        ResinCheck.Run(filled, faults, warnings);
        MixCheck.Run(filled, faults, warnings);
        LeakCheck.Run(plan, filled, faults, warnings);
        BagCheck.Run(filled, faults, warnings);
        VolatileCheck.Run(filled, faults);
        WettingCheck.Run(filled, faults);
        ClampCheck.Run(filled, faults);
        DrawingCheck.Run(filled, faults, warnings);
        NotComputedCheck.Run(filled, faults);
        return new PlanCheck(filled, faults.ToList(), [.. warnings.Select(warning => PlainText.Of(warning, LongestWarning))]);
    }

    /// <summary>Whether a text was not read at all: of its keys nothing is known, and each would seem to be missing.</summary>
    internal static bool IsUnread(IReadOnlyList<Fault> found) =>
        found.Any(static fault => fault.Reason == ErrorReason.NotJson || (fault.Reason == ErrorReason.TooLarge && fault.Path.Length == 0));
}
