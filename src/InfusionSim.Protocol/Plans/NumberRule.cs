using Google.Protobuf;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Plans;

/// <summary>What one number of a plan may be.</summary>
/// <param name="Least">Smallest value, in the unit of the key.</param>
/// <param name="Most">Largest value, in the unit of the key.</param>
/// <param name="Unit">How the unit is written after a number; empty for a ratio.</param>
public sealed record NumberRule(double Least, double Most, string Unit)
{
    /// <summary>Whether a plan without it is refused; otherwise it has a default or an alternative.</summary>
    public bool IsNeeded { get; init; }

    /// <summary>Tells of the message around it that it may be left out there after all; null when it never may.</summary>
    public Func<IMessage, bool>? IsSpared { get; init; }

    /// <summary>What to do about a value out of range, from the value and the plan; null for nothing to add.</summary>
    public Func<double, InfusionPlan?, string?>? Advice { get; init; }

    /// <summary>Example that is shown when the number is missing, with its unit.</summary>
    public string Example { get; init; } = "";
}
