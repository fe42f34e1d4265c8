using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.Units;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Resins;

/// <summary>Checks a viscosity that was measured over time: in order, and never falling.</summary>
internal static class CurveCheck
{
    private const string Points = "resin.viscosityCurve.points";

    /// <summary>Checks a curve.</summary>
    public static void Run(ViscosityCurve curve, FaultList faults)
    {
        if (faults.HasUnder(Points)) return;
        if (curve.Points.Count < 2)
        {
            faults.Add(Points, $"{Points} has {curve.Points.Count} readings; a curve needs at least two.");
            return;
        }

        bool falls = false;
        for (int k = 1; k < curve.Points.Count; k++)
        {
            (CurvePoint before, CurvePoint now) = (curve.Points[k - 1], curve.Points[k]);
            if (now.AtMin <= before.AtMin)
                faults.Add($"{Points}[{k}].atMin", $"{Points}[{k}].atMin is {Numbers.Say(now.AtMin)} min, not after the reading before it ({Numbers.Say(before.AtMin)} min). Give the readings in order of time.");
            else if (now.ViscosityPaS < before.ViscosityPaS && !falls)
            {
                falls = true;
                bool risesAgain = curve.Points.Skip(k + 1).Any(later => later.ViscosityPaS > now.ViscosityPaS);
                faults.Add($"{Points}[{k}].viscosityPaS", $"{Points}[{k}].viscosityPaS is {Numbers.Say(now.ViscosityPaS)} Pa·s, below the {Numbers.Say(before.ViscosityPaS)} Pa·s before it{(risesAgain ? ", and rises again later" : "")}. "
                    + "At one temperature a resin that cures only thickens: the cup warmed itself, or a reading slipped. Measure in a thin layer at a steady temperature, or leave out the readings before the lowest.");
            }
        }
    }
}
