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
        inputs.Resin.ShouldBe(new Physics.Resins.Resin(0.2, 3600, 360, 1100));
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
    public void ToPanel_RealLayUp_TurnsEveryUnitIntoSi()
    {
        Physics.Panels.Panel panel = PlanMapping.ToPanel(PlanChecker.Check(RealLayUp.Plan()).Plan);

        Physics.Panels.FlowMesh mesh = panel.FlowMeshes.ShouldHaveSingleItem();
        mesh.Area!.Corners[2].ShouldBe(new Point2(0.5, 0.4));
        (mesh with { Area = null }).ShouldBe(new("Mesh1", null, Physics.Panels.PanelFace.BagSide, 0.001, 0.85, new(3e-9, 3e-9, 3e-9, 0)));
        panel.PeelPly.ShouldBe(new(0.0002, 0.5, new(1e-10, 1e-10, 1e-12, 0)));
        panel.Gaps[0].Path.Points.ShouldBe([new Point2(0, 0.39), new Point2(0.6, 0.39)]);
        (panel.Gaps[0].Name, panel.Gaps[0].Width, panel.Gaps[0].Height).ShouldBe(("G1", 0.002, null));
        (panel.Feeds[0].Bore, panel.Feeds[0].Pot).ShouldBe((0.01, "Pot1"));
        panel.Feeds[0].Hose.ShouldBe(new(0.008, 2, false, new Point2(0, 0.2)));
        (panel.Vents[0].Bore, panel.Vents[0].Hose).ShouldBe((0.008, new Physics.Panels.Hose(0.008, 3)));
        panel.Pots.ShouldHaveSingleItem().ShouldBe(new("Pot1", -0.3, new(0.012, 1, true)));
        panel.Slope.ShouldBe(new(0, 20 * Math.PI / 180));
        panel.SubLayers.ShouldBe(5);
    }

    [Fact]
    public void ToPanel_PlainCore_IsWhatItsGroovesAndHolesComeTo()
    {
        Physics.Panels.Core core = PlanMapping.ToPanel(PlanChecker.Check(RealLayUp.Plan()).Plan).Cores.ShouldHaveSingleItem();

        core.ShouldBe(Physics.Layers.CutCore.Of("Core1", core.Area, 0.5, 0.015, new(0.002, 0.002, 0.02, 0, true), new(0.003, 0.04)));
        core.Area!.Corners[0].ShouldBe(new Point2(0.1, 0.1));
    }

    [Fact]
    public void ToPanel_LayUp_IsWhatItsPliesComeTo()
    {
        Physics.Panels.Zone zone = PlanMapping.ToPanel(PlanChecker.Check(With(plan => plan.Preform.Zones[0] = new Zone
        {
            Name = "skin",
            Porosity = 0.5,
            LayUp = new LayUp { Plies = { RealLayUp.Ply(45), RealLayUp.Ply(-45), RealLayUp.Ply(0, 0.3) } },
        })).Plan).Zones.ShouldHaveSingleItem();

        // ±45° of equal thickness is alike both ways: (K1 + K2)/2; the third ply adds its own by thickness.
        zone.Thickness.ShouldBe(0.0015, 1e-15);
        zone.Permeability.K1.ShouldBe((1.2 * 2.5e-10 + 0.3 * 4e-10) / 1.5, 1e-21);
        zone.Permeability.K2.ShouldBe((1.2 * 2.5e-10 + 0.3 * 1e-10) / 1.5, 1e-21);
        zone.Permeability.K3.ShouldBe(4e-12, 1e-23);
        Math.Sin(zone.Permeability.Angle).ShouldBe(0, 1e-9);
    }

    [Fact]
    public void ToPanel_PliesWithTheWeightOfTheirFibre_AreAsThickAsItMakesThem()
    {
        Physics.Panels.Zone zone = PlanMapping.ToPanel(PlanChecker.Check(With(plan => plan.Preform.Zones[0] = LayUpCheckTests.GlassZone())).Plan).Zones.ShouldHaveSingleItem();

        zone.Thickness.ShouldBe(2.8125e-3, 1e-12);
        zone.Fibres.ShouldBe([new Physics.Laminates.FibreWeight(0.6, 2560, 6)]);
    }

    [Fact]
    public void ToPanel_LayUpWithOnePlyOfUnknownWeight_HasNoFibreWeight() =>
        PlanMapping.ToPanel(PlanChecker.Check(With(plan =>
        {
            plan.Preform.Zones[0] = LayUpCheckTests.GlassZone();
            plan.Preform.Zones[0].LayUp.Plies.Add(RealLayUp.Ply(0));
        })).Plan).Zones[0].Fibres.ShouldBeEmpty();

    [Fact]
    public void ToPanel_FlowThroughCoreAndToolSideMesh_AreTakenAsTheyAre()
    {
        Physics.Panels.Panel panel = PlanMapping.ToPanel(PlanChecker.Check(With(plan =>
        {
            plan.Cores.Add(new Core { Name = "net", ThicknessMm = 5, ToolSkinFraction = 0.3, Porosity = 0.4, Permeability = new V1.Permeability { K1M2 = 1e-9, AngleDeg = 90 } });
            plan.FlowMeshes.Add(RealLayUp.Mesh());
            plan.FlowMeshes[0].Face = PanelFace.ToolSide;
            plan.FlowMeshes[0].Area = null;
            plan.Gaps.Add(new Gap { Name = "edge", Path = PathOf((0, 0), (600, 0)), WidthMm = 1, HeightMm = 2.5 });
        })).Plan);

        panel.Cores[0].ShouldBe(new("net", null, 0.3, 0.005, 0.4, new(1e-9, 1e-9, 1e-9, Math.PI / 2)));
        (panel.FlowMeshes[0].Face, panel.FlowMeshes[0].Area).ShouldBe((Physics.Panels.PanelFace.ToolSide, null));
        panel.Gaps[0].Height.ShouldBe(0.0025);
    }

    [Fact]
    public void ToPanel_PlanWithoutThem_HasNoLayersHosesPotsNorSlope()
    {
        Physics.Panels.Panel panel = PlanMapping.ToPanel(PlanChecker.Check(Plan()).Plan);

        (panel.FlowMeshes.Count, panel.Cores.Count, panel.Gaps.Count, panel.Pots.Count).ShouldBe((0, 0, 0, 0));
        panel.PeelPly.ShouldBeNull();
        panel.SubLayers.ShouldBeNull();
        panel.Slope.ShouldBeNull();
        (panel.Feeds[0].Bore, panel.Feeds[0].Hose, panel.Feeds[0].Pot).ShouldBe((null, null, null));
        (panel.Vents[0].Bore, panel.Vents[0].Hose).ShouldBe((null, null));
    }

    [Fact]
    public void ToInputs_RingThatRepeatsItsFirstCorner_ClosesItself() =>
        PlanMapping.ToRing(RingOf((0, 0), (10, 0), (10, 0), (10, 10), (0, 0))).Corners.Count.ShouldBe(3);

    [Fact]
    public void ToInputs_PlanWithFaults_IsRefused() =>
        Should.Throw<ArgumentException>(() => PlanMapping.ToInputs(PlanChecker.Check(new InfusionPlan())));
}
