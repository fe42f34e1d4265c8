using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Layers;
using InfusionSim.Physics.Panels;
using InfusionSim.Verification.Tests.Accuracy;
using InfusionSim.Verification.Tests.Settings;

namespace InfusionSim.Verification.Tests;

/// <summary>A flow mesh runs ahead of the laminate under it by a distance that stays the same.</summary>
public sealed class MeshLagTests
{
    private const string Source = "lead and lag under a mesh, derived";
    private const double CellSize = 2.5e-3;

    // The closed form lets nothing run along the laminate inside the lag; next to nothing is the same, and leaves the laminate its reach.
    private const double HardlyAlong = 1e-14;

    private static readonly Lazy<Strip> AsAssumed = new(() => Compute(HardlyAlong, 5)), AsLaid = new(() => Compute(Reference.Permeability, 5));

    [Theory]
    [InlineData(0.5)]
    [InlineData(0.8)]
    public void Lag_WithoutFlowAlongTheLaminate_IsThatOfTheClosedForm(double place)
    {
        // Source: z dz/ds = K₃Π/(φ₂K₁), dΠ/ds = φ₂z/h₁ + φ₁, solved in closed form (derived; see MeshLag). No flow along the laminate inside the
        // lag, as it assumes.
        // Case: mesh 1 mm, 3e-9 m², φ 0.85 with K3 1e-8 m² on laminate 3 mm, K3 5e-12 m², φ 0.5; five sub-layers, squares of 2.5 mm.
        // Expected: ℓ = 0.0455383 m from the front in the mesh to that on the mould. Tolerance 3 %: five sub-layers lengthen it by about 1 %, a
        // square is 5 % of it, read between middles.
        Strip strip = AsAssumed.Value;

        new AccuracyRecord($"lag under a mesh at {place} m", Source, 0.0455383, strip.LagAt(place), "m", strip.Grid).ShouldHold(0.03);
    }

    [Fact]
    public void Lag_AlongTheStrip_StaysTheSame()
    {
        // Source: the closed form has no distance in it. Case as above. Tolerance: a tenth of a square between 0.3 m and 0.9 m.
        Strip strip = AsAssumed.Value;
        double near = strip.LagAt(0.3), far = strip.LagAt(0.9);

        (far - near).ShouldBe(0, CellSize / 10, $"lag {near:G5} m at 0.3 m, {far:G5} m at 0.9 m, {strip.Grid}");
    }

    [Theory]
    [InlineData(HardlyAlong)]
    [InlineData(Reference.Permeability)]
    public void Front_InTheMesh_ComesToTheEndAtTheTimeOfTheClosedForm(double along)
    {
        // Source and case as above, with next to no flow along the laminate and with 1e-10 m². Expected: the leading front at 1 m at the closed
        // form's time, 694.612 s with 1e-10 m² (checked below). Tolerance 0.7 %: the laminate's own flow inside the lag, which the closed form
        // leaves out, and the grid.
        Strip strip = along == HardlyAlong ? AsAssumed.Value : AsLaid.Value;
        double last = strip.BagSide[^1] + (strip.BagSide[^1] - strip.BagSide[^2]) / 2;

        new AccuracyRecord(
            $"mesh on laminate of {along:G2} m², leading front at 1 m", Source, Form(along).ClockAt(1) / Reference.ClockRate,
            last / Reference.ClockRate, "s", strip.Grid).ShouldHold(7e-3);
    }

    [Fact]
    public void Lag_WithFlowAlongTheLaminate_IsShorterThanTheClosedForm()
    {
        // Source: own resolution, four times as many sub-layers on the same squares; the closed form leaves out what runs along the laminate, which
        // with K₂ = 20 K₃ brings resin to the mould sooner.
        // Case as above with K₂ = 1e-10 m². Expected: the lag of 20 sub-layers, and less than nine tenths of the closed form's. Tolerance 3 %: as above.
        Strip strip = AsLaid.Value, resolved = Compute(Reference.Permeability, 20);

        new AccuracyRecord(
            "lag under a mesh, flow along the laminate too", "20 sub-layers", resolved.LagAt(0.5), strip.LagAt(0.5), "m", strip.Grid).ShouldHold(0.03);
        strip.LagAt(0.5).ShouldBeLessThan(0.9 * Form(Reference.Permeability).Length);
    }

    [Theory]
    [InlineData(1, 0.12)]
    [InlineData(2, 0.06)]
    [InlineData(3, 0.04)]
    [InlineData(10, 0.02)]
    public void Lag_ByNumberOfSubLayers_ComesCloserToTheClosedForm(int count, double tolerance)
    {
        // Source and case as above; the rule for the number of sub-layers rests on this. Tolerance: about a tenth of 1/n, and the grid.
        Strip strip = Compute(HardlyAlong, count);

        new AccuracyRecord($"lag under a mesh, {count} sub-layers", Source, 0.0455383, strip.LagAt(0.5), "m", strip.Grid, InTable: false).ShouldHold(tolerance);
    }

    [Fact]
    public void ClosedForm_OfTheCase_HasTheNumbersOfAnIndependentCalculation()
    {
        // Source: the formulas evaluated independently, and the two balances integrated (0.04554 m). Tolerance 1e-5: digits given.
        MeshLag lag = Form(Reference.Permeability);
        double limit = (lag with { MeshPorosity = 0 }).Length;

        new AccuracyRecord("lag, closed form", Source, 0.0455383, lag.Length, "m", "no grid", InTable: false).ShouldHold(1e-5);
        new AccuracyRecord("lag, mesh without volume", Source, 0.103923, limit, "m", "no grid", InTable: false).ShouldHold(1e-5);
        new AccuracyRecord("pressure at the end of the lag", Source, 0.0706753, lag.PressureLength, "m", "no grid", InTable: false).ShouldHold(1e-5);
        new AccuracyRecord("time to wet through", Source, 0.9, lag.ThroughClock / Reference.ClockRate, "s", "no grid", InTable: false).ShouldHold(1e-9);
        new AccuracyRecord(
            "leading front at 1 m, closed form", Source, 694.612, lag.ClockAt(1) / Reference.ClockRate, "s", "no grid", InTable: false).ShouldHold(1e-6);
    }

    private static MeshLag Form(double along) => new(1e-3, 3e-9, 0.85, 3e-3, along, 5e-12, 0.5);

    private static Strip Compute(double along, int subLayers)
    {
        Zone laminate = MeshStrip.Laminate(MeshStrip.ThroughPermeability);
        FillMap map = Chain.Map(Chain.Problem(MeshStrip.Of(CellSize, laminate with { Permeability = laminate.Permeability with { K1 = along, K2 = along } }, subLayers, MeshStrip.Mesh(1e-8))));
        return new(map.BagSideArrival, map.ToolSideArrival, $"{Chain.GridOf(map.Problem)}, {subLayers} sub-layers");
    }

    private sealed record Strip(double[] BagSide, double[] ToolSide, string Grid)
    {
        // Distance from a place of the front in the mesh back to the front on the mould.
        public double LagAt(double place)
        {
            double at = place / CellSize - 0.5;
            int cell = (int)Math.Floor(at);
            double clock = BagSide[cell] + (at - cell) * (BagSide[cell + 1] - BagSide[cell]);
            int behind = Array.FindLastIndex(ToolSide, arrival => arrival <= clock);
            return place - (behind + 0.5 + (clock - ToolSide[behind]) / (ToolSide[behind + 1] - ToolSide[behind])) * CellSize;
        }
    }
}
