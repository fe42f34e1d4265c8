using InfusionSim.Protocol.Plans;
using InfusionSim.Protocol.Units;
using Contract = InfusionSim.Protocol.V1;
using Domain = InfusionSim.Physics.Forecasts;

namespace InfusionSim.Protocol.Forecasts;

/// <summary>Turns what is done with clamps and vacuum into the contract's.</summary>
internal static class ClampEventMapping
{
    /// <summary>Maps one thing that is done.</summary>
    public static Contract.ClampEvent ToContract(Domain.ClampEvent done)
    {
        var answer = new Contract.ClampEvent
        {
            Line = done.Line ?? "",
            TimeS = UnitConversion.Kept(Finite.Needed(done.Time, "the time a clamp is turned")),
            When = ClampMapping.ToContract(done.When),
        };
        if (done.Line is null) answer.PressureMbarAbs = UnitConversion.MbarFromPascal(done.Value);
        else answer.OpenFraction = UnitConversion.Kept(done.Value);
        return answer;
    }
}
