using InfusionSim.Physics.Laminates;
using InfusionSim.Verification.Tests.Accuracy;

namespace InfusionSim.Verification.Tests;

/// <summary>Thickness and weight of laminates from what the rolls of cloth say.</summary>
public sealed class LaminateTests
{
    private const string Source = "definitions, reckoned by hand";

    [Fact]
    public void Glass_SixPliesOfSixHundredGrams_WeighWhatTheyMust()
    {
        // Source: n·m/(ρ·Vf), h(1 − Vf)ρ. Case: glass 2560 kg/m³ at 0.5, resin 1100 kg/m³. Tolerance 1e-9: a formula.
        Laminate laminate = Laminate.Of([new(0.6, 2560, 6)], 0.5, 1100);

        Hold("thickness", 2.8125e-3, laminate.Thickness, "m", 1e-9, inTable: true);
        Hold("resin", 1.546875, laminate.ResinMass, "kg/m²", 1e-9, inTable: true);
        Hold("fibre", 3.6, laminate.FibreMass, "kg/m²", 1e-9);
        Hold("density", 1830, laminate.Density, "kg/m³", 1e-9);
        Hold("fibre by weight", 3.6 / 5.146875, laminate.FibreWeightFraction, "", 1e-9);
        Hold("fibre by weight from volume", 3.6 / 5.146875, FibreFraction.ByWeight(0.5, 2560, 1100), "", 1e-9);
        Hold("fibre by volume from weight", 0.5, FibreFraction.ByVolume(3.6 / 5.146875, 2560, 1100), "", 1e-9);

        // The printed figures end after six places.
        laminate.FibreWeightFraction.ShouldBe(0.699454, 5e-7);

        static void Hold(string what, double expected, double observed, string unit, double tolerance, bool inTable = false) =>
            new AccuracyRecord($"glass laminate 6 × 600 g/m², {what}", Source, expected, observed, unit, "no grid", inTable).ShouldHold(tolerance);
    }

    [Fact]
    public void Carbon_FourPliesOfThreeHundredGrams_WeighWhatTheyMust()
    {
        // Source as above. Case: carbon 1780 kg/m³ at 0.55, resin 1150 kg/m³: 1.2/979 m and 1.2 · 0.45 · 1150/979 kg/m². Tolerance 1e-9: a formula.
        Laminate laminate = Laminate.Of([new(0.3, 1780, 4)], 0.55, 1150);

        new AccuracyRecord("carbon laminate 4 × 300 g/m², thickness", Source, 1.2 / 979, laminate.Thickness, "m", "no grid", InTable: false).ShouldHold(1e-9);
        new AccuracyRecord("carbon laminate 4 × 300 g/m², resin", Source, 621.0 / 979, laminate.ResinMass, "kg/m²", "no grid", InTable: false).ShouldHold(1e-9);

        // The printed figures end after six places.
        laminate.Thickness.ShouldBe(1.225741e-3, 5e-10);
        laminate.ResinMass.ShouldBe(0.634321, 5e-7);
    }
}
