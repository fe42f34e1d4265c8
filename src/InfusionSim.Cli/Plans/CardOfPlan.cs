using InfusionSim.Protocol.V1;

namespace InfusionSim.Cli.Plans;

/// <summary>Puts another resin into a plan: a card, or a viscosity curve with the rest of the plan's own resin.</summary>
public static class CardOfPlan
{
    /// <summary>Replaces the resin of a plan.</summary>
    /// <param name="plan">The plan; changed in place.</param>
    /// <param name="path">File of the card, or .csv of a viscosity over time.</param>
    /// <exception cref="Commands.CommandException">When there is no such file, or it cannot be understood.</exception>
    public static void Replace(InfusionPlan plan, string path)
    {
        ArgumentNullException.ThrowIfNull(plan);
        if (CurveFile.IsOne(path))
        {
            ViscosityCurve curve = CurveFile.Read(path);
            plan.Resin ??= new Resin();
            plan.Resin.ClearViscosityPaS();
            plan.Resin.ClearViscosityAtDegC();
            plan.Resin.ClearViscosityActivationKjPerMol();
            plan.Resin.ViscosityTemperatures.Clear();
            plan.Resin.ViscosityRise = null;
            if (plan.Resin.Kinetics is CureKinetics kinetics) kinetics.Thickening = null;
            plan.Resin.ViscosityCurve = curve;
            return;
        }

        Resin card = CardFile.Read(path);

        // The time from mixing to opening is the shop's habit more than the resin's.
        if (!card.HasMixToOpenMin && plan.Resin is { HasMixToOpenMin: true } own) card.MixToOpenMin = own.MixToOpenMin;
        plan.Resin = card;
    }
}
