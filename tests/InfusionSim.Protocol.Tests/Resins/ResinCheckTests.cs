using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.Plans;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Tests.Resins;

public sealed class ResinCheckTests
{
    [Theory]
    [InlineData(Cards.Plain)]
    [InlineData(Cards.Table)]
    [InlineData(Cards.Curve)]
    [InlineData(Cards.Rise)]
    [InlineData(Cards.Kinetics)]
    public void Card_OfEachKind_IsSound(string json)
    {
        PlanCheck check = PlanChecker.Check(Cards.On(json));
        check.Faults.Select(fault => fault.Text).ShouldBeEmpty();
        check.Warnings.ShouldBeEmpty();
    }

    public static TheoryData<string, string, string> Bad => new()
    {
        { """{ "gelTimeMin": 60, "densityKgPerM3": 1100 }""", "resin.viscosityPaS", "is missing" },
        { """{ "viscosityPaS": 0.3, "densityKgPerM3": 1100 }""", "resin.gelTimeMin", "potLifeMin, a viscosityCurve up to gel, or kinetics" },
        { Cards.Table.Replace("{ \"viscosityT", "{ \"viscosityPaS\": 0.3, \"viscosityT", StringComparison.Ordinal), "resin.viscosityTemperatures", "give one of them" },
        { Cards.Curve.Replace("{ \"viscosityC", "{ \"viscosityPaS\": 0.3, \"viscosityC", StringComparison.Ordinal), "resin.viscosityCurve", "give one of them" },
        { Cards.Curve.Replace("\"densityK", "\"viscosityRise\": { \"doublingMin\": 40 }, \"densityK", StringComparison.Ordinal), "resin.viscosityCurve", "cannot thicken twice" },
        { Cards.Kinetics.Replace("\"source\"", "\"viscosityRise\": { \"doublingMin\": 40 }, \"source\"", StringComparison.Ordinal), "resin.viscosityRise", "cannot thicken twice" },
        { Cards.Table.Replace("0.114165", "0.4", StringComparison.Ordinal), "resin.viscosityTemperatures[2].viscosityPaS", "thinner as it gets warmer" },
        { Cards.Table.Replace("\"degC\":40", "\"degC\":25", StringComparison.Ordinal), "resin.viscosityTemperatures[2].degC", "each temperature once" },
        { """{ "viscosityTemperatures": [ {"degC":15,"viscosityPaS":0.6} ], "gelTimeMin": 60, "densityKgPerM3": 1100 }""", "resin.viscosityTemperatures", "a line needs two" },
        { Cards.Curve.Replace("\"viscosityPaS\":0.4", "\"viscosityPaS\":0.2", StringComparison.Ordinal), "resin.viscosityCurve.points[1].viscosityPaS", "and rises again later" },
        { Cards.Curve.Replace("\"viscosityPaS\":2}", "\"viscosityPaS\":0.35}", StringComparison.Ordinal), "resin.viscosityCurve.points[2].viscosityPaS", "only thickens" },
        { Cards.Curve.Replace("\"atMin\":50", "\"atMin\":20", StringComparison.Ordinal), "resin.viscosityCurve.points[2].atMin", "in order of time" },
        { """{ "viscosityCurve": { "points": [ {"atMin":0,"viscosityPaS":0.3} ] }, "densityKgPerM3": 1100 }""", "resin.viscosityCurve.points", "at least two" },
        { """{ "viscosityPaS": 0.3, "viscosityRise": {}, "gelTimeMin": 60, "densityKgPerM3": 1100 }""", "resin.viscosityRise.doublingMin", "says not how fast" },
        { """{ "viscosityPaS": 0.3, "viscosityRise": { "factorPerS": 1e6 }, "gelTimeMin": 60, "densityKgPerM3": 1100 }""", "resin.viscosityRise.activationKjPerMol", "is missing" },
        { """{ "viscosityPaS": 0.3, "gelTimeAtDegC": 25, "kinetics": { "firstFactorPerS": 1e5, "firstActivationKjPerMol": 55, "gelConversion": 0.5 }, "densityKgPerM3": 1100 }""", "resin.gelTimeAtDegC", "speaks of gelTimeMin" },
        { Cards.Kinetics.Replace("\"gelConversion\": 0.577, ", "", StringComparison.Ordinal), "resin.kinetics.gelConversion", "is missing" },
        { Cards.Kinetics.Replace("\"firstActivationKjPerMol\": 55, ", "", StringComparison.Ordinal), "resin.kinetics.firstActivationKjPerMol", "is missing" },
        { Cards.Kinetics.Replace("1e5", "0", StringComparison.Ordinal), "resin.kinetics.startConversion", "would never begin" },
        { Cards.Kinetics.Replace("\"handlingConversion\": 0.9", "\"handlingConversion\": 0.5", StringComparison.Ordinal), "resin.kinetics.handlingConversion", "cannot be handled" },
        { Cards.Kinetics.Replace("1e5", "1e-5", StringComparison.Ordinal).Replace("2e5", "2e-5", StringComparison.Ordinal), "resin.kinetics", "never reach the gel point" },
        { Cards.Plain.Replace("0.3", "90", StringComparison.Ordinal).Replace("\"gel", "\"viscosityAtDegC\": 30, \"gel", StringComparison.Ordinal), "shop.temperatureDegC", "nothing above 100 Pa·s" },
    };

    [Theory]
    [MemberData(nameof(Bad))]
    public void Card_ThatSaysTooLittleOrTooMuch_IsRefusedAtItsPlace(string json, string path, string says)
    {
        IReadOnlyList<Fault> faults = PlanChecker.Check(Cards.On(json)).Faults;
        faults.Select(fault => fault.Path).ShouldBe([path]);
        faults[0].Text.ShouldContain(says);
    }

    [Theory]
    [InlineData(Cards.Table, 12, "carried over beyond what was measured")]
    [InlineData(Cards.Kinetics, 12, "carried over beyond what was measured")]
    public void Temperature_JustOutsideTheMeasuredOnes_IsWarnedOf(string json, double degC, string says)
    {
        PlanCheck check = PlanChecker.Check(Cards.On(json, degC, card => card.MixToOpenMin = 0));
        check.Faults.Select(fault => fault.Text).ShouldBeEmpty();
        check.Warnings.ShouldContain(warning => warning.Contains(says, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(Cards.Table, 4)]
    [InlineData(Cards.Table, 51)]
    [InlineData(Cards.Kinetics, 4)]
    public void Temperature_FarOutsideTheMeasuredOnes_IsRefused(string json, double degC)
    {
        Fault fault = PlanChecker.Check(Cards.On(json, degC)).Faults.ShouldHaveSingleItem();
        fault.Path.ShouldBe("shop.temperatureDegC");
        fault.Text.ShouldContain("It must lie between");
    }

    [Fact]
    public void Temperature_OtherThanTheCurves_IsRefused()
    {
        Fault fault = PlanChecker.Check(Cards.On(Cards.Curve, 18, card => card.ViscosityCurve.AtDegC = 23)).Faults.ShouldHaveSingleItem();
        fault.Path.ShouldBe("shop.temperatureDegC");
        fault.Text.ShouldContain("A curve says nothing of another temperature");
    }

    [Fact]
    public void Temperature_InOneRowOfACourse_IsRefusedAtThatRow()
    {
        InfusionPlan plan = Cards.On(Cards.Table);
        plan.Shop = Cards.Course((0, 20), (30, 70));
        PlanChecker.Check(plan).Faults.ShouldHaveSingleItem().Path.ShouldBe("shop.temperatures[1].temperatureDegC");
    }

    [Fact]
    public void Course_OutOfOrderOrBesideOneTemperature_IsRefused()
    {
        InfusionPlan plan = Cards.On(Cards.Table);
        plan.Shop = Cards.Course((30, 20), (30, 25));
        plan.Shop.TemperatureDegC = 20;
        PlanChecker.Check(plan).Faults.Select(fault => fault.Path).ShouldBe(["shop.temperatures", "shop.temperatures[1].atMin"]);
    }

    // 60 min at 25 °C is 30 min at 35 °C by the rule of the workshop.
    [Fact]
    public void Gel_BeforeOpeningAtTheShopsTemperature_IsRefusedWithThatTime()
    {
        InfusionPlan plan = Cards.On(Cards.Plain, 35, card => (card.GelTimeAtDegC, card.MixToOpenMin) = (25, 40));
        Fault fault = PlanChecker.Check(plan).Faults.ShouldHaveSingleItem();
        fault.Path.ShouldBe("resin.mixToOpenMin");
        fault.Text.ShouldContain("gels 30 min after mixing at 35 °C");
    }

    [Fact]
    public void Shop_LeftOutWhereTheCardSpeaksOfTemperatures_IsTwentyDegrees()
    {
        PlanChecker.Check(Cards.On(Cards.Table)).Plan.Shop.TemperatureDegC.ShouldBe(20);
        PlanChecker.Check(Cards.On(Cards.Plain)).Plan.Shop.ShouldBeNull();
        PlanChecker.Check(Cards.On(Cards.Curve, null, card => card.ViscosityCurve.AtDegC = 23)).Plan.Shop.TemperatureDegC.ShouldBe(23);
    }

    [Theory]
    [InlineData("resin", "batches", "oldest batch")]
    [InlineData("resin", "secondBatchAtMin", "oldest batch")]
    [InlineData("pots[0]", "refillAtMin", "oldest batch")]
    [InlineData("preform.zones[0]", "temperatureDegC", "a heated zone cannot be computed")]
    [InlineData("preform.zones[0]", "heatedToDegC", "a heated zone cannot be computed")]
    public void Key_OfWhatCannotBeComputed_IsAnsweredWithTheCautiousPlan(string place, string key, string says)
    {
        string json = place switch
        {
            "resin" => Plans.StraightStrip.Json.Replace("\"viscosityPaS\"", $"\"{key}\": 1, \"viscosityPaS\"", StringComparison.Ordinal),
            "pots[0]" => Plans.StraightStrip.Json.Replace("\"gaps\"", $"\"pots\": [ {{ \"name\": \"P\", \"{key}\": 1 }} ], \"gaps\"", StringComparison.Ordinal),
            _ => Plans.StraightStrip.Json.Replace("\"porosity\"", $"\"{key}\": 1, \"porosity\"", StringComparison.Ordinal),
        };
        Fault fault = PlanJson.Read(json).Faults.ShouldHaveSingleItem();
        fault.Path.ShouldBe($"{place}.{key}");
        fault.Reason.ShouldBe(ErrorReason.NotComputedYet);
        fault.Text.ShouldContain(says);
        fault.Text.ShouldContain("as old as the oldest batch");
    }
}
