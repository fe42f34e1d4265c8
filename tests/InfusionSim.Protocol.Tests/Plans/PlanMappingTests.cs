using InfusionSim.Numerics.Geometry;
using InfusionSim.Protocol.Plans;
using InfusionSim.Protocol.V1;
using static InfusionSim.Protocol.Tests.Plans.StraightStrip;

namespace InfusionSim.Protocol.Tests.Plans;

public sealed class PlanMappingTests
{
    [Fact]
    public void ToInputs_ExamplePlan_TurnsEveryUnitIntoSi()
    {
        FillInputs inputs = PlanMapping.ToInputs(PlanChecker.Check(Plan()));

        inputs.Panel.Region.Outline.Corners[2].ShouldBe(new Point2(0.6, 0.4));
        inputs.Panel.Zones[0].ShouldBe(new Physics.Panels.Zone("skin", null, 0.003, 0.5, new Physics.Panels.Permeability(1e-10, 1e-10, 1e-12, 0)));
        inputs.Panel.Feeds[0].ContactWidth.ShouldBe(0.012);
        inputs.Panel.Feeds[0].Path.Points.ShouldBe([new Point2(0, 0), new Point2(0, 0.4)]);
        inputs.Panel.Vents[0].Kind.ShouldBe(Physics.Panels.VentKind.Tube);
        inputs.Panel.TimingMarks[0].ShouldBe(new Physics.Panels.TimingMark("M1", new Point2(0.3, 0.2)));
        inputs.Panel.CellSize.ShouldBe(0.005);
        inputs.Resin.ShouldBe(new Physics.Clock.Resin(0.2, 3600, 360, 1100));
        inputs.Bag.ShouldBe(new Physics.Clock.Bag(1325, 101325));
        inputs.Goals.ShouldBe(new Physics.Forecasts.Goals(1e-4, 1, 2e-4));
        inputs.PermeabilityFactor.ShouldBe(1.5);
    }

    [Fact]
    public void ToInputs_WhatIsLeftOut_TakesTheDocumentedDefaults()
    {
        FillInputs inputs = PlanMapping.ToInputs(PlanChecker.Check(With(plan =>
        {
            plan.Preform.ClearPermeabilityFactor();
            plan.Preform.Zones[0].Permeability = new V1.Permeability { K1M2 = 4e-10 };
            plan.Preform.Zones[0].ClearPorosity();
            plan.Preform.Zones[0].FibreVolumeFraction = 0.55;
            plan.Feeds[0].ClearContactWidthMm();
            plan.Vents[0].Kind = V1.VentKind.Membrane;
            plan.Resin.ClearMixToOpenMin();
            plan.Bag.ClearAmbientMbarAbs();
            plan.Goals = null;
        })));

        inputs.PermeabilityFactor.ShouldBe(1.5);
        inputs.Panel.Zones[0].Permeability.ShouldBe(new Physics.Panels.Permeability(4e-10, 4e-10, 4e-12, 0));
        inputs.Panel.Zones[0].Porosity.ShouldBe(0.45, 1e-15);
        inputs.Panel.Feeds[0].ContactWidth.ShouldBe(0.012);
        inputs.Panel.Vents[0].Kind.ShouldBe(Physics.Panels.VentKind.Membrane);
        inputs.Resin.MixToOpen.ShouldBe(0);
        inputs.Bag.Ambient.ShouldBe(101325);
        inputs.Goals.ShouldBe(new Physics.Forecasts.Goals());
    }

    [Fact]
    public void ToInputs_RingThatRepeatsItsFirstCorner_ClosesItself() =>
        PlanMapping.ToRing(RingOf((0, 0), (10, 0), (10, 0), (10, 10), (0, 0))).Corners.Count.ShouldBe(3);

    [Fact]
    public void ToInputs_PlanWithFaults_IsRefused() =>
        Should.Throw<ArgumentException>(() => PlanMapping.ToInputs(PlanChecker.Check(new InfusionPlan())));
}
