using InfusionSim.Cli.Settings;
using InfusionSim.Cli.Shapes;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Cli.Tests.Settings;

public sealed class PlanSetterTests
{
    private readonly InfusionPlan _plan = FirstPlan.Of("plate", "600x400");

    [Theory]
    [InlineData("resin.viscosityPaS=300mPa.s", "resin.viscosityPaS = 0.3 Pa·s")]
    [InlineData("bag.pressureMbarAbs=-0.95bar(g)", "bag.pressureMbarAbs = 63.25 mbar absolute (gauge -950 mbar with 1013.25 mbar of air)")]
    [InlineData("preform.zones[0].thicknessMm=4", "preform.zones[0].thicknessMm = 4 mm")]
    [InlineData("preform.zones[skin].permeability.k1M2=2e-10", "preform.zones[skin].permeability.k1M2 = 2e-10 m²")]
    [InlineData("vents[V1].kind=membrane", "vents[V1].kind = VENT_KIND_MEMBRANE")]
    [InlineData("feeds[F1].path.points[1].xMm=0.5m", "feeds[F1].path.points[1].xMm = 500 mm")]
    [InlineData("title=My plate", "title = 'My plate'")]
    [InlineData("resolution.cellMm=4", "resolution.cellMm = 4 mm")]
    [InlineData("slope.angleDeg=20", "slope.angleDeg = 20 °")]
    [InlineData("feeds[0].boreMm=8mm", "feeds[0].boreMm = 8 mm")]
    [InlineData("feeds[F1].hose.lengthM=2m", "feeds[F1].hose.lengthM = 2 m")]
    [InlineData("feeds[F1].hose.lengthM=200cm", "feeds[F1].hose.lengthM = 2 m")]
    [InlineData("feeds[F1].hose.primed=yes", "feeds[F1].hose.primed = true")]
    [InlineData("resolution.subLayers=5", "resolution.subLayers = 5")]
    [InlineData("preform.zones[0].fibreVolumeFraction=0.55", "preform.zones[0].fibreVolumeFraction = 0.55 (in place of porosity)")]
    public void Set_KeyOfThePlan_IsSetAndEchoed(string typed, string echo) =>
        PlanSetter.Set(_plan, Setting.Parse(typed)).ShouldBe(echo);

    [Fact]
    public void Set_Values_StandInThePlan()
    {
        PlanSetter.Set(_plan, Setting.Parse("resin.viscosityPaS=300mPa.s"));
        PlanSetter.Set(_plan, Setting.Parse("vents[0].kind=VENT_KIND_MEMBRANE"));
        PlanSetter.Set(_plan, Setting.Parse("preform.zones[skin].fibreVolumeFraction=0.55"));

        _plan.Resin.ViscosityPaS.ShouldBe(0.3);
        _plan.Vents[0].Kind.ShouldBe(VentKind.Membrane);
        _plan.Preform.Zones[0].HasPorosity.ShouldBeFalse();
        _plan.Preform.Zones[0].FibreVolumeFraction.ShouldBe(0.55);
    }

    [Theory]
    [InlineData("resin.viscosityPas=1", "a plan has no key resin.viscosityPas. Did you mean resin.viscosityPaS?")]
    [InlineData("resin.viscosty=1", "Did you mean resin.viscosityPaS?")]
    [InlineData("viscosityPaS=1", "Did you mean resin.viscosityPaS?")]
    [InlineData("porosity=0.4", "Did you mean preform.zones[0].porosity?")]
    [InlineData("resn.viscosityPaS=1", "Did you mean resin?")]
    [InlineData("bag.xyz=1", "Keys here: pressureMbarAbs, ambientMbarAbs, ")]
    [InlineData("preform.zones.porosity=0.4", "preform.zones is a list; say which: preform.zones[0].")]
    [InlineData("preform.zones[3].porosity=0.4", "has 1 item")]
    [InlineData("vents[V9].kind=membrane", "vents has none called 'V9'. There are: V1.")]
    [InlineData("vents[0].kind=membran", "Did you mean MEMBRANE?")]
    [InlineData("resin=1", "resin holds several values")]
    [InlineData("resin.viscosityPaS.x=1", "nothing lies below it")]
    [InlineData("gaps[0].widthMm=1", "gaps is empty in this plan")]
    [InlineData("resin[0].viscosityPaS=1", "resin is no list")]
    [InlineData("resolution.subLayers=2.5", "no whole number")]
    [InlineData("feeds[0].hose.primed=perhaps", "neither true nor false")]
    [InlineData("feeds[0].hose.lenghtM=1", "Did you mean feeds[0].hose.lengthM?")]
    [InlineData("slope.angle=1", "Did you mean slope.angleDeg?")]
    [InlineData("a..b=1", "cannot be read as a key")]
    public void Set_WhatThereIsNot_SaysWhatThereIs(string typed, string says) =>
        Should.Throw<FormatException>(() => PlanSetter.Set(_plan, Setting.Parse(typed))).Message.ShouldContain(says);

    [Fact]
    public void Set_AnotherMoment_LetsGoOfTheOneBefore()
    {
        PlanSetter.Set(_plan, Setting.Parse("feeds[0].shuts.atMin=10")).ShouldBe("feeds[0].shuts.atMin = 10 min");
        PlanSetter.Set(_plan, Setting.Parse("feeds[0].shuts.whenReached=M1")).ShouldBe("feeds[0].shuts.whenReached = 'M1' (in place of atMin)");
        PlanSetter.Set(_plan, Setting.Parse("feeds[0].shuts.whenFull=true")).ShouldBe("feeds[0].shuts.whenFull = true (in place of whenReached)");
        _plan.Feeds[0].Shuts.ShouldBe(new InfusionSim.Protocol.V1.Moment { WhenFull = true });
    }

    [Theory]
    [InlineData("resin.viscosityPaS")]
    [InlineData("=3")]
    public void Parse_WithoutKeyOrSign_ShowsHowToWriteIt(string typed) =>
        Should.Throw<FormatException>(() => Setting.Parse(typed)).Message.ShouldContain("write KEY=VALUE");

    [Fact]
    public void Parse_ValueWithASign_KeepsIt() => Setting.Parse("title=a=b").Value.ShouldBe("a=b");

    [Fact]
    public void Keys_EveryNumber_HasAUnitOrIsARatio()
    {
        string[] ratios = ["porosity", "fibreVolumeFraction", "permeabilityFactor", "smallestGelMarginRatio", "toolSkinFraction", "partsByMass", "partsByVolume", "moleFraction", "openFraction", "reserveFraction", "startConversion", "gelConversion", "handlingConversion", "selfOrder", "restOrder", "exponent", "exponentPerConversion"];
        PlanKeys.All.Where(path => PlanKeyFacts.UnitOf(path).Length == 0 && PlanKeyFacts.IsNumber(path))
            .Select(path => path[(path.LastIndexOf('.') + 1)..]).Distinct().ShouldBe(ratios, ignoreOrder: true);
    }
}
