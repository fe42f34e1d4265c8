using InfusionSim.Physics.Forecasts;
using InfusionSim.Physics.Panels;
using InfusionSim.Verification.Tests.Accuracy;
using InfusionSim.Verification.Tests.Settings;

namespace InfusionSim.Verification.Tests;

/// <summary>A band without mesh before the vent: the front slows down there and the laminate under the mesh catches up.</summary>
public sealed class ResinBrakeTests
{
    private const double CellSize = 0.01;
    private const double MeshLength = 0.9;

    [Fact]
    public void FillTime_WithABareBand_IsThatOfTwoZonesInSeries()
    {
        // Source: t = Σ Φⱼ (Lⱼ Σᵢ Lᵢ/Tᵢ + Lⱼ²/(2Tⱼ)) over the zones before and in j, T = ΣKh, Φ = Σφh (derived). Case: mesh on the first 0.9 m of
        // the strip, K3 1e-6 m² in both, so that mesh and laminate are one. Expected: from the formula, 708.6 s. Tolerance 0.2 %: the last way out
        // of the mesh is taken to run through bare laminate from middle to middle, half a square too much: first order in the square, 0.16 % here.
        const double Both = MeshStrip.MeshPermeability * MeshStrip.MeshThickness + Reference.Permeability * Reference.Thickness, Alone = Reference.Permeability * Reference.Thickness;
        const double Pores = Reference.Porosity * Reference.Thickness, PoresOfBoth = MeshStrip.MeshPorosity * MeshStrip.MeshThickness + Pores, Band = MeshStrip.Length - MeshLength;
        const double Clock = PoresOfBoth * MeshLength * MeshLength / (2 * Both) + Pores * (Band * MeshLength / Both + Band * Band / (2 * Alone));
        Forecast forecast = Chain.Predict(Braked(1e-6, 1e-6, CellSize / 4));

        new AccuracyRecord(
            "mesh on 0.9 m of 1 m", "zones in series, derived", Clock / Reference.ClockRate, forecast.FillTime!.Value, "s",
            Chain.GridOf(forecast.Map.Problem)).ShouldHold(2e-3);
    }

    [Fact]
    public void Band_LongerThanTheLag_LetsTheToolSideCatchUpBeforeTheVentIsWet()
    {
        // Source: the lag is 45 mm at most; a band of 100 mm is more. Case: the strip of the lag with the mesh up to the vent and with the band.
        // Expected: with the mesh up to the vent resin is there with part of the laminate dry: at least the lag's wedge, a third of ℓ/L; with the
        // band less than a tenth of that is.
        Forecast open = Chain.Predict(WithTube(Braked(MeshStrip.ThroughPermeability, 1e-8) with { FlowMeshes = [MeshStrip.Mesh(1e-8)] })), braked = Chain.Predict(WithTube(Braked(MeshStrip.ThroughPermeability, 1e-8)));
        double dry = 1 - open.Vents[0].FilledFractionAtArrival!.Value, rest = 1 - braked.Vents[0].FilledFractionAtArrival!.Value;

        dry.ShouldBeGreaterThan(0.01);
        rest.ShouldBeLessThan(0.1 * dry, $"{dry:P2} dry with the mesh up to the vent, {rest:P2} with the band");
        open.Lag!.StopsInTime.ShouldBe(false);
        braked.Lag!.StopsInTime.ShouldBe(true);
        braked.Lag.MeshToVent!.Value.ShouldBe(0.1, 1e-9);
        open.Lag.ExpectedLength!.Value.ShouldBe(0.0455383, 1e-6);

        // Between what many sub-layers on small squares show with flow along the laminate, and the closed form without it.
        open.Lag.Length!.Value.ShouldBeInRange(0.037, 0.0456);
    }

    [Fact]
    public void ToolSide_UnderTightLaminate_IsFoundBehind()
    {
        // Source: t_z = φh²/(2K₃Δp/μ) = 180 s to wet through from above at 2.5e-14 m², against 0.25 m of mesh filled in about 20 s. Expected: the
        // finding, with its place and time. Case: short strip, mesh up to the vent.
        Panel panel = Chain.ReferencePanel(
            Shapes.Rectangle(0.25, CellSize), CellSize, new LinePath([new(0, 0), new(0, CellSize)]), new LinePath([new(0.25, 0), new(0.25, CellSize)])) with
        {
            Zones = [MeshStrip.Laminate(2.5e-14)],
            FlowMeshes = [MeshStrip.Mesh(1e-8)],
        };
        Forecast forecast = Chain.Predict(panel);

        Finding finding = forecast.Findings.Single(finding => finding.Kind == FindingKind.ToolSideBehind);
        finding.Amount!.Value.ShouldBe(forecast.Lag!.LargestLag);
        finding.Amount.Value.ShouldBeGreaterThan(0.1 * forecast.EndTime);
        finding.At!.Value.X.ShouldBeInRange(0, 0.25);
    }

    private static Panel Braked(double laminate, double mesh, double cellSize = CellSize) =>
        MeshStrip.Of(cellSize, MeshStrip.Laminate(laminate), null, MeshStrip.Mesh(mesh, Shapes.Box(0, 0, MeshLength, cellSize)));

    private static Panel WithTube(Panel panel) => panel with { Vents = [panel.Vents[0] with { Kind = VentKind.Tube }] };
}
