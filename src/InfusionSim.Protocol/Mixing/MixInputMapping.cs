using InfusionSim.Planning.Mixing;
using InfusionSim.Protocol.Plans;
using InfusionSim.Protocol.Units;
using Contract = InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Mixing;

/// <summary>Turns what a plan says about mixing into what the planning takes.</summary>
public static class MixInputMapping
{
    /// <summary>Maps the mixing of a plan; what it leaves out is filled in and shown.</summary>
    /// <param name="inputs">The plan in SI; its plan takes the defaults for mixing.</param>
    public static MixInputs ToInputs(FillInputs inputs)
    {
        ArgumentNullException.ThrowIfNull(inputs);
        Contract.Mix mix = inputs.Plan.Mix ??= new Contract.Mix();
        PlanDefaults.FillIn(mix);
        return new MixInputs(inputs.Resin.Density, inputs.Resin.MixToOpen, new MixWishes(
            mix.ReserveFraction,
            UnitConversion.KilogramsFromGrams(mix.PotRestG),
            mix.HasLargestBatchG ? UnitConversion.KilogramsFromGrams(mix.LargestBatchG) : null,
            UnitConversion.SecondsFromMin(mix.VentsOpenAfterMin),
            mix.HasPotCoolingWPerK ? mix.PotCoolingWPerK : null,
            UnitConversion.KelvinFromDegC(mix.WarmestPotDegC)))
        {
            Ratio = ToRatio(inputs.Plan.Resin.MixRatio),
            Kinetics = inputs.Resin.Kinetics,
            ShopTemperature = inputs.Resin.Temperature?.At(-inputs.Resin.MixToOpen),
        };
    }

    private static MixRatio? ToRatio(Contract.MixRatio? ratio) => ratio switch
    {
        null => null,
        { HasPartsByMass: true } => MixRatio.OfMass(ratio.PartsByMass),
        _ => MixRatio.OfVolume(ratio.PartsByVolume, ratio.ResinDensityKgPerM3, ratio.HardenerDensityKgPerM3),
    };
}
