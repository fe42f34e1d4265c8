using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.Units;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Resins;

/// <summary>Checks what the numbers of the cure say together.</summary>
internal static class KineticsCheck
{
    private const string Path = "resin.kinetics";

    /// <summary>Checks the kinetics of a card.</summary>
    public static void Run(CureKinetics kinetics, FaultList faults)
    {
        Pair(kinetics.HasFirstFactorPerS, kinetics.HasFirstActivationKjPerMol, "first", faults);
        Pair(kinetics.HasSecondFactorPerS, kinetics.HasSecondActivationKjPerMol, "second", faults);
        if (kinetics is { HasFittedFromDegC: true, HasFittedToDegC: true } && kinetics.FittedFromDegC > kinetics.FittedToDegC)
            faults.Add($"{Path}.fittedToDegC", $"{Path}.fittedToDegC is {Numbers.Say(kinetics.FittedToDegC)} °C, below fittedFromDegC ({Numbers.Say(kinetics.FittedFromDegC)} °C). Swap them.");
        if (faults.HasUnder(Path)) return;
        if (kinetics.FirstFactorPerS == 0 && kinetics.SecondFactorPerS == 0)
            faults.Add($"{Path}.firstFactorPerS", $"{Path} gives neither firstFactorPerS nor secondFactorPerS: it never cures. Give at least one of the two rates.");
        else if (kinetics is { FirstFactorPerS: 0, StartConversion: 0 } && (!kinetics.HasSelfOrder || kinetics.SelfOrder > 0))
            faults.Add($"{Path}.startConversion", $"{Path} gives no firstFactorPerS and starts at a degree of cure of 0: the cure would never begin. Give startConversion, for example 0.0001.");
        if (kinetics.StartConversion >= kinetics.GelConversion)
            faults.Add($"{Path}.startConversion", $"{Path}.startConversion is {Numbers.Say(kinetics.StartConversion)}, not below gelConversion ({Numbers.Say(kinetics.GelConversion)}): it would be solid when it is mixed.");
        if (kinetics.HasHandlingConversion && kinetics.HandlingConversion < kinetics.GelConversion)
            faults.Add($"{Path}.handlingConversion", $"{Path}.handlingConversion is {Numbers.Say(kinetics.HandlingConversion)}, below gelConversion ({Numbers.Say(kinetics.GelConversion)}): a part that has not gelled cannot be handled.");
    }

    private static void Pair(bool hasFactor, bool hasActivation, string which, FaultList faults)
    {
        if (hasFactor == hasActivation || faults.HasUnder(Path)) return;
        string missing = which + (hasFactor ? "ActivationKjPerMol" : "FactorPerS"), given = which + (hasFactor ? "FactorPerS" : "ActivationKjPerMol");
        faults.Add($"{Path}.{missing}", $"{Path}.{missing} is missing; {given} says nothing without it.");
    }
}
