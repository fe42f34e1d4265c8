using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.Json;
using InfusionSim.Protocol.Plans;
using InfusionSim.Protocol.V1;
using static InfusionSim.Protocol.Tests.Plans.RealLayUp;

namespace InfusionSim.Protocol.Tests.Plans;

public sealed class RealLayUpTests
{
    private static readonly Dictionary<string, Action<InfusionPlan>> Slips = new()
    {
        ["thin mesh"] = plan => plan.FlowMeshes[0].ThicknessMm = 0.001,
        ["mesh per cent"] = plan => plan.FlowMeshes[0].Porosity = 85,
        ["mesh without thickness"] = plan => plan.FlowMeshes[0].ClearThicknessMm(),
        ["mesh without permeability"] = plan => plan.FlowMeshes[0].Permeability = null,
        ["mesh of no choice"] = plan => plan.FlowMeshes[0].Face = (PanelFace)7,
        ["thick peel ply"] = plan => plan.PeelPly.ThicknessMm = 20,
        ["core without passages"] = plan => (plan.Cores[0].Grooves, plan.Cores[0].Holes) = (null, null),
        ["core both ways"] = plan => plan.Cores[0].Porosity = 0.3,
        ["core share"] = plan => plan.Cores[0].ToolSkinFraction = 50,
        ["wide grooves"] = plan => plan.Cores[0].Grooves.WidthMm = 20,
        ["deep grooves"] = plan => plan.Cores[0].Grooves.DepthMm = 16,
        ["wide holes"] = plan => plan.Cores[0].Holes.DiameterMm = 40,
        ["open core without porosity"] = plan => plan.Cores[0] = new Core { ThicknessMm = 5, Permeability = new Permeability { K1M2 = 1e-9 } },
        ["long hose"] = plan => plan.Feeds[0].Hose.LengthM = 2000,
        ["hose beside its line"] = plan => plan.Feeds[0].Hose.JoinsAt = StraightStrip.At(30, 200),
        ["primed vent hose"] = plan => plan.Vents[0].Hose.Primed = true,
        ["pot hose that joins"] = plan => plan.Pots[0].Hose.JoinsAt = StraightStrip.At(0, 0),
        ["unknown pot"] = plan => plan.Feeds[0].Pot = "pot 1",
        ["no pots"] = plan => plan.Pots.Clear(),
        ["wide bore"] = plan => plan.Feeds[0].BoreMm = 25,
        ["wide gap"] = plan => plan.Gaps[0].WidthMm = 16,
        ["fitting with a bore"] = plan => (plan.Feeds[0].Path, plan.Feeds[0].Hose) = (StraightStrip.PathOf((0, 0)), null),
        ["gap of one point"] = plan => plan.Gaps[0].Path = StraightStrip.PathOf((300, 200)),
        ["gap off the cloth"] = plan => plan.Gaps[0].Path = StraightStrip.PathOf((0, 450), (600, 450)),
        ["gap across a cut-out"] = plan =>
        {
            plan.Preform.Cutouts.Add(StraightStrip.RingOf((520, 340), (580, 340), (580, 395), (520, 395)));
            plan.Gaps[0].Path = StraightStrip.PathOf((0, 370), (600, 370));
        },
        ["feed doubles back"] = plan => plan.Feeds[0].Path = StraightStrip.PathOf((0, 0), (0, 400), (0, 100)),
        ["steep slope"] = plan => plan.Slope.AngleDeg = 95,
        ["downward slope"] = plan => plan.Slope.AngleDeg = -20,
        ["slope without angle"] = plan => plan.Slope.ClearAngleDeg(),
        ["too many layers"] = plan => plan.Resolution.SubLayers = 21,
        ["too many places"] = plan => (plan.Resolution.CellMm, plan.Resolution.SubLayers, plan.Feeds[0].BoreMm, plan.Vents[0].BoreMm) = (1, 8, 2, 2),
        ["mesh off the cloth"] = plan => plan.FlowMeshes[0].Area = StraightStrip.RingOf((700, 0), (900, 0), (900, 400)),
        ["mesh that crosses itself"] = plan => plan.FlowMeshes[0].Area = StraightStrip.RingOf((0, 0), (500, 400), (500, 0), (0, 400)),
        ["mesh with too few corners"] = plan => plan.FlowMeshes[0].Area = new Ring(),
        ["steep anisotropy"] = plan => plan.FlowMeshes[0].Permeability = new Permeability { K1M2 = 3e-9, K2M2 = 2e-11 },
        ["two pots of one name"] = plan =>
        {
            plan.Pots[0].Name = "Pot1";
            plan.Pots.Add(plan.Pots[0].Clone());
        },
        ["core called like a mesh"] = plan => (plan.FlowMeshes[0].Name, plan.Cores[0].Name) = ("net", "net"),
        ["gap called like a feed"] = plan => plan.Gaps[0].Name = "F1",
    };

    public static TheoryData<string, string, string> Said => new()
    {
        { "thin mesh", "flowMeshes[0].thicknessMm", "flowMeshes[0].thicknessMm is 0.001 mm; it must lie between 0.05 and 50 mm. Lengths are millimetres: 0.001 m is 1." },
        { "mesh per cent", "flowMeshes[0].porosity", "flowMeshes[0].porosity is 85; it must lie between 0.05 and 0.98. Give a fraction, not per cent." },
        { "mesh without thickness", "flowMeshes[0].thicknessMm", "flowMeshes[0].thicknessMm is missing; give it in mm, for example \"thicknessMm\": 1." },
        { "mesh without permeability", "flowMeshes[0].permeability", "flowMeshes[0] has no permeability; give at least k1M2, for example { \"k1M2\": 3e-9 }." },
        { "mesh of no choice", "flowMeshes[0].face", "flowMeshes[0].face is the number 7, which is no choice here. It must be one of PANEL_FACE_BAG_SIDE, PANEL_FACE_TOOL_SIDE." },
        { "thick peel ply", "peelPly.thicknessMm", "peelPly.thicknessMm is 20 mm; it must lie between 0.05 and 5 mm. Lengths are millimetres." },
        { "core without passages", "cores[0]", "cores[0] does not say how resin runs through it; give grooves, holes or both for a plain core, porosity and permeability for a flow-through core. A core that resin neither runs through nor passes is left out: give the skins as zones." },
        { "core both ways", "cores[0].porosity", "cores[0] gives both grooves or holes and porosity; a plain core has grooves and holes, a flow-through core has porosity and permeability. Give one of the two." },
        { "core share", "cores[0].toolSkinFraction", "cores[0].toolSkinFraction is 50; it must lie between 0.05 and 0.95. Give a fraction, not per cent." },
        { "wide grooves", "cores[0].grooves.widthMm", "grooves of core 'Core1' are 20 mm wide and 20 mm apart; widthMm must be below pitchMm, 20 mm. pitchMm counts from middle to middle." },
        { "deep grooves", "cores[0].grooves.depthMm", "grooves of core 'Core1' are 16 mm deep, and the core is 15 mm thick; depthMm must be at most 15 mm." },
        { "wide holes", "cores[0].holes.diameterMm", "holes of core 'Core1' are 40 mm wide and 40 mm apart; diameterMm must be below pitchMm, 40 mm. pitchMm counts from middle to middle." },
        { "open core without porosity", "cores[0].porosity", "cores[0] gives no porosity; give the share of its thickness that resin can fill, for example \"porosity\": 0.3." },
        { "long hose", "feeds[0].hose.lengthM", "feeds[0].hose.lengthM is 2000 m; it must lie between 0.01 and 50 m. It is metres: 2000 mm is 2." },
        { "hose beside its line", "feeds[0].hose.joinsAt", "the hose of feed 'F1' joins at (30, 200) mm, 30 mm beside its line; it must be a place on the line. The nearest is (0, 200) mm." },
        { "primed vent hose", "vents[0].hose.primed", "vents[0].hose.primed is true; a hose on a vent begins empty, or no air could leave through it. Leave primed out." },
        { "pot hose that joins", "pots[0].hose.joinsAt", "pots[0].hose.joinsAt is given; the hose of a pot ends at its T-piece. Give joinsAt in the hose of a feed." },
        { "unknown pot", "feeds[0].pot", "feeds[0].pot is 'pot 1', and no pot is called so; did you mean 'Pot1'?" },
        { "no pots", "feeds[0].pot", "feeds[0].pot is 'Pot1', and no pot is called so: the plan has no pots. Give it in pots, or leave pot out for a pot of the feed's own." },
        { "wide bore", "feeds[0].boreMm", "feeds[0].boreMm is 25 mm, 5 squares of 5 mm: an area, not a line; it must be at most 15 mm. Take squares of 8.4 mm or more (resolution.cellMm), or leave boreMm out: so wide a line loses hardly any pressure." },
        { "wide gap", "gaps[0].widthMm", "gaps[0].widthMm is 16 mm, 3.2 squares of 5 mm: an area, not a line; it must be at most 15 mm. Take squares of 5.4 mm or more (resolution.cellMm), or draw it as a zone of its own." },
        { "fitting with a bore", "feeds[0].boreMm", "feed 'F1' is a fitting and has no length to lose pressure along; leave boreMm out, or give a hose its bore: feeds[0].hose.boreMm." },
        { "gap of one point", "gaps[0].path", "gap 'G1' has one point; a gap runs from place to place. Give at least two points." },
        { "gap off the cloth", "gaps[0].path", "gap 'G1', point 1, at (0, 450) mm lies 50 mm outside the cloth; it must touch the cloth. The nearest place on its edge is (0, 400) mm." },
        { "gap across a cut-out", "gaps[0].path", "gap 'G1' leaves the cloth near (550, 370) mm, and no cloth beside it tells its height there; keep it on the cloth, or give heightMm." },
        { "feed doubles back", "feeds[0].path", "feed 'F1' doubles back on itself at (0, 250) mm: part of it lies on another part. Draw each stretch once; a branch is a feed of its own." },
        { "steep slope", "slope.angleDeg", "slope.angleDeg is 95 °; it must lie between 0 and 90 °. 90 is upright." },
        { "downward slope", "slope.angleDeg", "slope.angleDeg is -20 °; it must lie between 0 and 90 °. It is never negative: slope.uphillDeg says which way the panel rises." },
        { "slope without angle", "slope.angleDeg", "slope.angleDeg is missing; give it in °, for example \"angleDeg\": 20." },
        { "too many layers", "resolution.subLayers", "resolution.subLayers is 21; it must lie between 1 and 20. It is how many layers the lay-up is cut into through its thickness; 3 to 5 are enough beside a flow mesh." },
        { "too many places", "resolution", "resolution asks for 240,000 squares in 11 layers: 2,640,000 places; at most 1,000,000 are computed. Take squares of 1.7 mm (cellMm) or fewer layers (subLayers)." },
        { "mesh off the cloth", "flowMeshes[0].area", "flow mesh 'Mesh1' lies beside the cloth: its area begins at (700, 0) mm and meets none of it. Move it onto the cloth, or leave area out for the whole preform." },
        { "mesh that crosses itself", "flowMeshes[0].area", "flowMeshes[0].area crosses or touches itself at (250, 200) mm; give its corners in order, once round." },
        { "mesh with too few corners", "flowMeshes[0].area.points", "flowMeshes[0].area has 0 corners; it needs at least 3; leave area out for the whole preform." },
        { "steep anisotropy", "flowMeshes[0].permeability.k2M2", "flowMeshes[0].permeability.k2M2 is 2e-11 m², and k1M2 is 3e-9 m²: 150 to 1. They may differ 100 times at most; beside k1M2 3e-9 it must lie between 3e-11 and 3e-7 m²." },
        { "two pots of one name", "pots[1].name", "pots[1].name is 'Pot1', and so is pots[0].name; give each its own name." },
        { "core called like a mesh", "cores[0].name", "cores[0].name is 'net', and so is flowMeshes[0].name; give each its own name." },
        { "gap called like a feed", "gaps[0].name", "gaps[0].name is 'F1', and so is feeds[0].name; give each its own name." },
    };

    [Theory]
    [MemberData(nameof(Said))]
    public void Check_SlipInARealLayUp_SaysWhatValueRangeAndWhatToDo(string slip, string path, string text) =>
        FaultsOf(With(Slips[slip])).ShouldHaveSingleItem().ShouldBe(new Fault(path, text, slip == "too many places" ? ErrorReason.TooLarge : ErrorReason.PlanInvalid));

    [Fact]
    public void Check_EverySlip_IsTold() => Slips.Keys.ShouldBe(Said.Select(row => row.Data.Item1), ignoreOrder: true);

    [Fact]
    public void Check_RealLayUp_HasNoFaultAndNoWarning()
    {
        FaultsOf(Plan()).ShouldBeEmpty();
        PlanChecker.Check(Plan()).Warnings.ShouldBeEmpty();
    }

    [Fact]
    public void Check_GapOfKnownHeightAcrossACutOut_Warns()
    {
        PlanCheck check = PlanChecker.Check(With(plan =>
        {
            Slips["gap across a cut-out"](plan);
            plan.Gaps[0].HeightMm = 2;
        }));

        check.Faults.ShouldBeEmpty();
        check.Warnings.ShouldHaveSingleItem().ShouldBe("gap 'G1' leaves the cloth near (550, 370) mm; there it touches nothing.");
    }

    [Fact]
    public void Check_WhatIsLeftOut_IsFilledIn()
    {
        InfusionPlan plan = PlanChecker.Check(Plan()).Plan;

        (plan.FlowMeshes[0].Name, plan.Cores[0].Name, plan.Gaps[0].Name, plan.Pots[0].Name).ShouldBe(("Mesh1", "Core1", "G1", "Pot1"));
        plan.FlowMeshes[0].Face.ShouldBe(PanelFace.BagSide);
        plan.FlowMeshes[0].Permeability.ShouldBe(new Permeability { K1M2 = 3e-9, K2M2 = 3e-9, K3M2 = 3e-9, AngleDeg = 0 });
        plan.PeelPly.Permeability.ShouldBe(new Permeability { K1M2 = 1e-10, K2M2 = 1e-10, K3M2 = 1e-12, AngleDeg = 0 });
        plan.Cores[0].ToolSkinFraction.ShouldBe(0.5);
        plan.Cores[0].Grooves.AngleDeg.ShouldBe(0);
        plan.Slope.UphillDeg.ShouldBe(0);
        plan.Gaps[0].HasHeightMm.ShouldBeFalse();
    }

    [Fact]
    public void Check_PlanWithItsDefaults_IsSoundAndChangesNoMore()
    {
        InfusionPlan once = PlanChecker.Check(With(plan => plan.Preform.Zones.Add(new Zone { Name = "plies", Porosity = 0.5, LayUp = new LayUp { Plies = { Ply(0), Ply(45) } } }))).Plan;

        PlanCheck again = PlanChecker.Check(once);

        FaultsOf(once).ShouldBeEmpty();
        again.Plan.ShouldBe(once);
    }

    [Fact]
    public void Write_RealLayUp_ReadsBackTheSame()
    {
        InfusionPlan plan = With(given => given.Preform.Zones[0] = new Zone { Name = "skin", Porosity = 0.5, LayUp = new LayUp { Plies = { Ply(0), Ply(-45, 0.4) } } });

        JsonReading<InfusionPlan> read = PlanJson.Read(PlanJson.Write(plan));

        read.Faults.ShouldBeEmpty();
        read.Message.ShouldBe(plan);
    }

    [Theory]
    [InlineData("\"gaps\": []", "\"gap\": []", "gap", "'gap' is not a key of the plan; did you mean 'gaps'?")]
    [InlineData("\"gaps\": []", "\"core\": []", "core", "'core' is not a key of the plan; did you mean 'cores'?")]
    [InlineData("\"gaps\": []", "\"peelply\": {}", "peelply", "did you mean 'peelPly'?")]
    [InlineData("\"gaps\": []", "\"slope\": { \"angle\": 3 }", "slope.angle", "did you mean 'angleDeg'?")]
    [InlineData("\"gaps\": []", "\"pots\": [ { \"level\": 3 } ]", "pots[0].level", "did you mean 'levelMm'?")]
    [InlineData("\"flowMeshes\": []", "\"flowMeshes\": [ { \"side\": 1 } ]", "flowMeshes[0].side", "known here are name, area, face")]
    [InlineData("\"flowMeshes\": []", "\"flowMeshes\": [ { \"face\": \"TOOL_SIDE\" } ]", "flowMeshes[0].face", "Did you mean PANEL_FACE_TOOL_SIDE?")]
    [InlineData("\"cellMm\": 5", "\"cellMm\": 5, \"subLayer\": 3", "resolution.subLayer", "did you mean 'subLayers'?")]
    [InlineData("\"cellMm\": 5", "\"cellMm\": 5, \"subLayers\": 2.5", "resolution.subLayers", "must be a whole number")]
    [InlineData("\"name\": \"F1\",", "\"name\": \"F1\", \"bore\": 8,", "feeds[0].bore", "did you mean 'boreMm'?")]
    [InlineData("\"name\": \"F1\",", "\"name\": \"F1\", \"hose\": { \"length\": 8 },", "feeds[0].hose.length", "did you mean 'lengthM'?")]
    [InlineData("\"name\": \"skin\",", "\"name\": \"skin\", \"layup\": {},", "preform.zones[0].layup", "did you mean 'layUp'?")]
    public void Read_MisspeltNewKey_NamesTheNearest(string from, string to, string path, string says)
    {
        Fault fault = PlanJson.Read(StraightStrip.Json.Replace(from, to, StringComparison.Ordinal)).Faults.ShouldHaveSingleItem();

        fault.Path.ShouldBe(path);
        fault.Text.ShouldContain(says, Case.Sensitive);
    }
}
