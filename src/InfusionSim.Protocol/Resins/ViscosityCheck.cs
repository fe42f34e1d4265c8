using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.Units;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Resins;

/// <summary>Checks that a card says once and without contradiction how thick the resin is.</summary>
internal static class ViscosityCheck
{
    // Farther off the fitted line than this, one line is not the story (our own judgement).
    private const double LooseFit = 0.1;

    /// <summary>Checks the viscosity of a card.</summary>
    public static void Run(Resin card, FaultList faults, List<string> warnings)
    {
        CheckOnce(card, faults);
        CheckTable(card, faults, warnings);
        if (card.ViscosityCurve is not null) CurveCheck.Run(card.ViscosityCurve, faults);
        if (card.ViscosityRise is ViscosityRise rise) CheckRise(rise, faults);
        if (card.ViscosityTemperatures.Count == 0 || faults.HasUnder("resin.viscosityTemperatures")) return;
        double residual = ResinMapping.ToFit(card)!.Residual;
        if (residual > LooseFit)
            warnings.Add($"resin.viscosityTemperatures lie up to {Numbers.Figures(100 * residual, 2)} % off the line that is drawn through them. Look for a slip, or leave out rows far from the temperature of your shop.");
    }

    private static void CheckOnce(Resin card, FaultList faults)
    {
        bool hasTable = card.ViscosityTemperatures.Count > 0, hasCurve = card.ViscosityCurve is not null;
        if (hasTable && card.HasViscosityPaS)
            faults.Add("resin.viscosityTemperatures", "resin gives both viscosityPaS and viscosityTemperatures; give one of them: the table says the viscosity at every temperature near its rows.");
        if (hasCurve && (hasTable || card.HasViscosityPaS))
            faults.Add("resin.viscosityCurve", $"resin gives both viscosityCurve and {(hasTable ? "viscosityTemperatures" : "viscosityPaS")}; give one of them: the curve says the viscosity at every time.");
        if (hasCurve && (card.ViscosityRise is not null || card.Kinetics?.Thickening is not null))
            faults.Add("resin.viscosityCurve", $"resin gives both viscosityCurve and {(card.ViscosityRise is not null ? "viscosityRise" : "kinetics.thickening")}: it cannot thicken twice. Give one of them.");
        if (card.ViscosityRise is not null && card.Kinetics?.Thickening is not null)
            faults.Add("resin.viscosityRise", "resin gives both viscosityRise and kinetics.thickening: it cannot thicken twice. Give one of them.");
        foreach ((bool isThere, string key) in ((bool, string)[])[(card.HasViscosityAtDegC, "viscosityAtDegC"), (card.HasViscosityActivationKjPerMol, "viscosityActivationKjPerMol")])
        {
            if (isThere && !card.HasViscosityPaS && !faults.HasUnder("resin.viscosityPaS"))
                faults.Add($"resin.{key}", $"resin.{key} speaks of viscosityPaS, which is not there. Give it, or leave {key} out.");
        }
    }

    private static void CheckTable(Resin card, FaultList faults, List<string> warnings)
    {
        const string Table = "resin.viscosityTemperatures";
        if (card.ViscosityTemperatures.Count == 0 || faults.HasUnder(Table)) return;
        if (card.ViscosityTemperatures.Count == 1)
        {
            faults.Add(Table, "resin.viscosityTemperatures has one row; a line needs two. For one temperature give viscosityPaS and viscosityAtDegC.");
            return;
        }

        (ViscosityPoint Row, int Index)[] rows = [.. card.ViscosityTemperatures.Select((row, k) => (row, k)).OrderBy(static one => one.row.DegC)];
        for (int k = 1; k < rows.Length; k++)
        {
            (ViscosityPoint cold, ViscosityPoint warm) = (rows[k - 1].Row, rows[k].Row);
            string path = $"{Table}[{rows[k].Index}]";
            if (warm.DegC == cold.DegC)
                faults.Add($"{path}.degC", $"{path}.degC is {Numbers.Say(warm.DegC)} °C, as in row {rows[k - 1].Index}. Give each temperature once.");
            else if (warm.ViscosityPaS >= cold.ViscosityPaS)
                faults.Add($"{path}.viscosityPaS", $"{path}.viscosityPaS is {Numbers.Say(warm.ViscosityPaS)} Pa·s at {Numbers.Say(warm.DegC)} °C, not below the {Numbers.Say(cold.ViscosityPaS)} Pa·s at {Numbers.Say(cold.DegC)} °C. Freshly mixed resin gets thinner as it gets warmer; look at the row again.");
        }
    }

    private static void CheckRise(ViscosityRise rise, FaultList faults)
    {
        const string Rise = "resin.viscosityRise";
        if (faults.HasUnder(Rise)) return;
        if (rise.HasDoublingMin && rise.HasFactorPerS)
            faults.Add($"{Rise}.factorPerS", $"{Rise} gives both doublingMin and factorPerS; give one of them.");
        else if (!rise.HasDoublingMin && !rise.HasFactorPerS)
            faults.Add($"{Rise}.doublingMin", $"{Rise} says not how fast; give doublingMin, the minutes in which the viscosity doubles, for example \"doublingMin\": 50.");
        else if (rise.HasFactorPerS && !rise.HasActivationKjPerMol)
            faults.Add($"{Rise}.activationKjPerMol", $"{Rise}.activationKjPerMol is missing; factorPerS says nothing without it.");
    }
}
