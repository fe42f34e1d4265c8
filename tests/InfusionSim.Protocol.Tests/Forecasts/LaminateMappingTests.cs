using InfusionSim.Protocol.Forecasts;
using InfusionSim.Protocol.Plans;
using InfusionSim.Protocol.Tests.Plans;
using InfusionSim.Protocol.V1;
using InfusionSim.Protocol.Words;

namespace InfusionSim.Protocol.Tests.Forecasts;

public sealed class LaminateMappingTests
{
    private static FillForecast Of(Action<InfusionPlan>? change = null) => ForecastMapping.ToContract(StripForecast.Build(), PlanMapping.ToInputs(PlanChecker.Check(StraightStrip.With(plan =>
    {
        plan.Preform.Zones[0] = LayUpCheckTests.GlassZone();
        change?.Invoke(plan);
    }))));

    // 0.24 m² of a laminate of 3.6 kg/m² of fibre and 1.546875 kg/m² of resin.
    [Fact]
    public void Laminates_ZoneOfKnownFibre_TellThicknessAndWeight()
    {
        FillForecast forecast = Of();

        LaminateForecast laminate = forecast.Laminates.ShouldHaveSingleItem();
        (laminate.Zone, laminate.ThicknessMm, laminate.FibreGPerM2, laminate.ResinGPerM2).ShouldBe(("skin", 2.8125, 3600, 1546.875));
        (laminate.FibreVolumeFraction, laminate.DensityKgPerM3).ShouldBe((0.5, 1830));
        laminate.FibreWeightFraction.ShouldBe(0.699454, 5e-7);
        laminate.AreaMm2.ShouldBe(240_000, 1e-6);
        laminate.WeightG.ShouldBe(1235.25, 1e-9);
        forecast.LaminateWeightG.ShouldBe(1235.25, 1e-9);
    }

    [Fact]
    public void Laminates_OneZoneNotKnown_LeaveOutTheWhole()
    {
        FillForecast forecast = Of(plan =>
        {
            Zone patch = StraightStrip.Plan().Preform.Zones[0];
            patch.Name = "patch";
            patch.Area = StraightStrip.RingOf((0, 0), (100, 0), (100, 100), (0, 100));
            plan.Preform.Zones.Add(patch);
        });

        forecast.Laminates.ShouldHaveSingleItem().AreaMm2.ShouldBe(230_000, 1e-6);
        forecast.HasLaminateWeightG.ShouldBeFalse();
    }

    [Fact]
    public void Words_LaminateOfKnownFibre_AreOneLine() =>
        FillWords.Lines(StraightStrip.Plan(), Of()).Single(line => line.Label == "Part").Text.ShouldBe(
            "2.81 mm thick, 5147 g a square metre, 70 % of it fibre; 1235 g on 0.24 m²");

    // What a plan says of core, mesh and peel ply has no weight in it, so none is made up.
    [Fact]
    public void Words_LayersWithoutWeight_AreNamedAsNotCounted()
    {
        InfusionPlan plan = StraightStrip.Plan();
        plan.Cores.Add(new Core());
        plan.FlowMeshes.Add(new FlowMesh());
        Told(plan).ShouldBe("not counted: the core with its resin, of which a plan gives no weight; the flow mesh with its resin, which comes off");

        plan.PeelPly = new PeelPly();
        plan.Cores.Clear();
        Told(plan).ShouldBe("not counted: flow mesh and peel ply with their resin, which come off");

        static string Told(InfusionPlan plan) => FillWords.Lines(plan, Of()).SkipWhile(static line => line.Label != "Part").ElementAt(1).Text;
    }
}
