using InfusionSim.Physics.Network;
using InfusionSim.Verification.Tests.Accuracy;

namespace InfusionSim.Verification.Tests;

/// <summary>Permeability of open passages.</summary>
public sealed class PassagesTests
{
    private const string Source = "laminar flow in slots, tubes and ducts, White, Viscous Fluid Flow (from memory)";

    [Theory]
    [InlineData(0.5e-3, 2.08333333e-8)]
    [InlineData(1e-3, 8.33333333e-8)]
    [InlineData(2e-3, 3.33333333e-7)]
    public void Slot_OfAGivenGap_ConductsAsPlanePoiseuilleFlow(double gap, double expected) =>

        // Source: g²/12. Tolerance 1e-6: a formula.
        new AccuracyRecord($"slot of {gap * 1e3:0.#} mm", Source, expected, Passages.Slot(gap), "m²", "no grid", InTable: false).ShouldHold(1e-6);

    [Fact]
    public void RoundTube_OfTenMillimetres_ConductsAsHagenAndPoiseuille()
    {
        // Source: r²/8 and π r⁴/8. Case: 10 mm across. Tolerance 1e-6: a formula.
        new AccuracyRecord("round tube of 10 mm", Source, 3.125e-6, Passages.Round(5e-3), "m²", "no grid", InTable: false).ShouldHold(1e-6);
        new AccuracyRecord(
            "round tube of 10 mm, conductance", Source, 2.454369261e-10, Passages.RoundConductance(5e-3), "m⁴", "no grid", InTable: false).ShouldHold(1e-6);
    }

    [Theory]
    [InlineData(1, 0.03514425)]
    [InlineData(2, 0.05717042)]
    [InlineData(4, 0.07020324)]
    [InlineData(10, 0.07808126)]
    public void Duct_OfAGivenRatioOfSides_ConductsAsTheSeries(double ratio, double expected)
    {
        // Source: the series for rectangular ducts, over the square of the shorter side. Tolerance 1e-6: what the digits given allow.
        double permeability = Passages.Duct(ratio * 1e-3, 1e-3);
        permeability.ShouldBe(Passages.Duct(1e-3, ratio * 1e-3));
        new AccuracyRecord(
            $"rectangular duct {ratio}:1", Source, expected, permeability / 1e-6, "of the shorter side squared", "no grid",
            InTable: ratio == 1).ShouldHold(1e-6);
    }

    [Fact]
    public void Duct_FlowSummedOverItsSection_IsTheSeries()
    {
        // Source: v'' = −1 across the section with v = 0 on its walls, by finite differences on 2 × 3 mm; K = mean of v. Independent of the series.
        double coarse = MeanVelocity(2e-3, 3e-3, 20), fine = MeanVelocity(2e-3, 3e-3, 40);
        double expected = fine + (fine - coarse) / 3;

        // Tolerance 1e-4: what extrapolation from two grids leaves.
        new AccuracyRecord(
            "duct 2 × 3 mm against its velocity field", "Poisson equation on the section, extrapolated", expected, Passages.Duct(2e-3, 3e-3), "m²",
            "20 and 40 across").ShouldHold(1e-4);
    }

    [Fact]
    public void DuctInShort_AtFourToOne_IsTheQuickForm()
    {
        // Source: (a²/12)(1 − 0.63 a/b). Tolerance 1e-6 of the printed digits.
        new AccuracyRecord(
            "rectangular duct 4:1, short form", Source, 0.07020833, Passages.DuctInShort(1e-3, 4e-3) / 1e-6, "of the shorter side squared", "no grid",
            InTable: false).ShouldHold(1e-6);
    }

    [Fact]
    public void Grooves_TwoByTwoMillimetresEveryTwenty_AddTheirShareOfTheDuct()
    {
        // Source: K a²/P, derived. Tolerance 1e-6: a formula.
        new AccuracyRecord(
            "grooves 2 × 2 mm every 20 mm", "duct law over the pitch, derived", 2.811540e-11, Passages.Grooves(2e-3, 2e-3, 20e-3), "m³",
            "no grid").ShouldHold(1e-6);
    }

    private static double MeanVelocity(double width, double height, int across)
    {
        double h = width / across;
        int columns = across, rows = (int)Math.Round(height / h);
        double[,] v = new double[columns + 1, rows + 1];
        double relaxation = 2 / (1 + Math.Sin(Math.PI / columns));
        for (int sweep = 0; sweep < 40 * across; sweep++)
        {
            for (int i = 1; i < columns; i++)
            {
                for (int j = 1; j < rows; j++)
                    v[i, j] += relaxation * ((v[i - 1, j] + v[i + 1, j] + v[i, j - 1] + v[i, j + 1] + h * h) / 4 - v[i, j]);
            }
        }

        return v.Cast<double>().Sum() * h * h / (width * height);
    }
}
