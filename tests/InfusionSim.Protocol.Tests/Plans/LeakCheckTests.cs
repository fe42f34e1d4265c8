using InfusionSim.Physics.Vacuum;
using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.Plans;
using InfusionSim.Protocol.V1;
using static InfusionSim.Protocol.Tests.Plans.StraightStrip;

namespace InfusionSim.Protocol.Tests.Plans;

public sealed class LeakCheckTests
{
    private static readonly Pump Small = new() { SpeedM3PerH = 4, LowestMbarAbs = 3 };

    private static readonly V1.DropTest Test = new() { RiseMbar = 8, Minutes = 10, VolumeL = 20 };

    [Fact]
    public void Pressure_LeftOutWithPumpAndDropTest_IsWhatThePumpHolds()
    {
        // 0.266667 mbar·L/s at 1.1111 L/s are 0.24 mbar on top of the 3 mbar of the pump.
        PlanCheck check = PlanChecker.Check(Held(bag => bag.DropTest = Test));

        check.Faults.ShouldBeEmpty();
        check.Warnings.ShouldBeEmpty();
        check.Plan.Bag.PressureMbarAbs.ShouldBe(3.24, 1e-9);
        PlanChecker.Check(check.Plan).Plan.ShouldBe(check.Plan);
    }

    [Fact]
    public void Pressure_LeftOutWithPumpAndLeak_IsWhatThePumpHolds() =>
        PlanChecker.Check(Held(bag => bag.LeakMbarLPerS = 1)).Plan.Bag.PressureMbarAbs.ShouldBe(3.9, 1e-9);

    [Fact]
    public void Pressure_LeftOutWithPumpAlone_IsMissing() =>
        PlanChecker.Check(Held(_ => { })).Faults.ShouldHaveSingleItem().Path.ShouldBe("bag.pressureMbarAbs");

    [Fact]
    public void Pressure_LeftOutWithALeakTheSizeOfThePump_IsNoVacuum()
    {
        // 400 mbar·L/s at 1 m³/h would be 1440 mbar.
        Fault fault = PlanChecker.Check(Held(bag => (bag.LeakMbarLPerS, bag.Pump) = (400, new Pump { SpeedM3PerH = 1, LowestMbarAbs = 0 }))).Faults.ShouldHaveSingleItem();

        fault.ShouldBe(new Fault("bag.pressureMbarAbs", "bag.pressureMbarAbs is left out, but against a leak of 400 mbar·L/s a pump of 1 m³/h holds 1440 mbar: no vacuum. Find the leak first."));
    }

    [Fact]
    public void Pressure_DeeperThanThePumpHolds_IsSaidWithBothNumbers()
    {
        PlanCheck check = PlanChecker.Check(With(plan => (plan.Bag.PressureMbarAbs, plan.Bag.Pump, plan.Bag.LeakMbarLPerS) = (5, Small, 30)));

        check.Faults.ShouldBeEmpty();
        check.Warnings.ShouldHaveSingleItem().ShouldBe(
            "bag.pressureMbarAbs is 5 mbar, deeper than the pump can hold: against a leak of 30 mbar·L/s a pump of 4 m³/h holds 30.0 mbar. Find the leak, or write 30.0.");
    }

    [Fact]
    public void Pressure_ThatThePumpHolds_IsNotRemarkedOn() =>
        PlanChecker.Check(With(plan => (plan.Bag.Pump, plan.Bag.DropTest) = (Small, Test))).Warnings.ShouldBeEmpty();

    [Fact]
    public void Leak_GivenTwice_IsRefused() =>
        PlanChecker.Check(With(plan => (plan.Bag.DropTest, plan.Bag.LeakMbarLPerS) = (Test, 1))).Faults.ShouldHaveSingleItem()
            .Text.ShouldBe("bag gives both leakMbarLPerS and dropTest; give one of them: the leak follows from the drop test.");

    [Fact]
    public void DropTest_IncompleteOrOutOfRange_IsRefusedEachByItsPath() =>
        PlanChecker.Check(With(plan => plan.Bag.DropTest = new V1.DropTest { RiseMbar = -1, VolumeL = 0 })).Faults.Select(fault => fault.Path)
            .ShouldBe(["bag.dropTest.riseMbar", "bag.dropTest.minutes", "bag.dropTest.volumeL"], ignoreOrder: true);

    [Fact]
    public void Ambient_LeftOutHighUp_IsThatOfTheStandardAtmosphere()
    {
        PlanCheck check = PlanChecker.Check(With(plan =>
        {
            plan.Bag.ClearAmbientMbarAbs();
            plan.Shop = new Shop { AltitudeM = 2000 };
        }));

        check.Faults.ShouldBeEmpty();
        check.Plan.Bag.AmbientMbarAbs.ShouldBe(794.952, 1e-2);
    }

    [Fact]
    public void Ambient_OfAWeatherReportHighUp_IsRemarkedOn() =>
        PlanChecker.Check(With(plan => plan.Shop = new Shop { AltitudeM = 2000 })).Warnings.ShouldHaveSingleItem()
            .ShouldStartWith("bag.ambientMbarAbs is 1013.25 mbar, but 2000 m above the sea the air has about 795. 1013.25 is used;");

    [Fact]
    public void Ambient_OfTheWeather_IsNotRemarkedOn() =>
        PlanChecker.Check(With(plan => (plan.Shop, plan.Bag.AmbientMbarAbs) = (new Shop { AltitudeM = 500 }, 940))).Warnings.ShouldBeEmpty();

    [Fact]
    public void Gauge_InAPlanFileHighUp_IsExplainedWithTheAirThere()
    {
        Fault fault = PlanChecker.Check(With(plan =>
        {
            plan.Bag = new Bag { PressureMbarAbs = -700 };
            plan.Shop = new Shop { AltitudeM = 2000 };
        })).Faults.ShouldHaveSingleItem();

        fault.Text.ShouldContain("with 794.952 mbar of air the absolute pressure is 94.952 mbar");
    }

    [Fact]
    public void ToInputs_PumpLeakAndVolatiles_TurnEveryUnitIntoSi()
    {
        FillInputs inputs = PlanMapping.ToInputs(PlanChecker.Check(With(plan =>
        {
            (plan.Bag.Pump, plan.Bag.DropTest) = (Small, Test);
            plan.Shop = new Shop { TemperatureDegC = 20 };
            plan.Resin.Volatiles.Add(new ResinVolatile { Kind = V1.VolatileKind.Styrene, MoleFraction = 0.6 });
        })));

        inputs.Bag.Leak!.Value.Throughput.ShouldBe(0.0266666667, 1e-9);
        inputs.Bag.Pump.ShouldBe(new VacuumPump(4.0 / 3600, 300));
        inputs.Bag.DrawnVolume.ShouldBe(0.02);
        inputs.Resin.Temperature!.Warmest.ShouldBe(293.15);
        inputs.Resin.Volatiles.ShouldHaveSingleItem().ShouldBe(new VolatileComponent(Physics.Vacuum.VolatileKind.Styrene, 0.6));
    }

    [Fact]
    public void Volatiles_NamedWrongly_AreRefusedEachByItsPath()
    {
        IReadOnlyList<Fault> faults = PlanChecker.Check(With(plan =>
        {
            plan.Resin.Volatiles.Add(new ResinVolatile { MoleFraction = 0.6 });
            plan.Resin.Volatiles.Add(new ResinVolatile { Kind = V1.VolatileKind.Water, MoleFraction = 40 });
            plan.Resin.Volatiles.Add(new ResinVolatile { Kind = V1.VolatileKind.Water, MoleFraction = 0.1 });
        })).Faults;

        faults.Select(fault => fault.Path).ShouldBe(
            ["resin.volatiles[0].kind", "resin.volatiles[1].moleFraction", "resin.volatiles[2].kind", "shop.temperatureDegC"], ignoreOrder: true);
    }

    [Fact]
    public void Volatiles_MoreThanTheWholeResin_AreRefused() =>
        PlanChecker.Check(With(plan =>
        {
            plan.Shop = new Shop { TemperatureDegC = 20 };
            plan.Resin.Volatiles.Add(new ResinVolatile { Kind = V1.VolatileKind.Styrene, MoleFraction = 0.8 });
            plan.Resin.Volatiles.Add(new ResinVolatile { Kind = V1.VolatileKind.Water, MoleFraction = 0.4 });
        })).Faults.ShouldHaveSingleItem().Path.ShouldBe("resin.volatiles");

    private static InfusionPlan Held(Action<Bag> change) => With(plan =>
    {
        plan.Bag = new Bag { Pump = Small };
        change(plan.Bag);
    });
}
