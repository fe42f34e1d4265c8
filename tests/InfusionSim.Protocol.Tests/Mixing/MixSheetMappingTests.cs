using InfusionSim.Planning.Mixing;
using InfusionSim.Protocol.Mixing;
using InfusionSim.Protocol.Plans;
using InfusionSim.Protocol.Tests.Plans;
using Contract = InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Tests.Mixing;

public sealed class MixSheetMappingTests
{
    [Fact]
    public void ToContract_SheetWithARatio_TellsGramsOfBoth()
    {
        Contract.MixSheet sheet = MixSheetMapping.ToContract(SampleSheet.Of(MixRatio.OfMass(25)));

        sheet.All.ShouldBe(new Contract.MixAmount { MixedG = 6000, ResinG = 4800, HardenerG = 1200 });
        (sheet.InPartG, sheet.InMeshG, sheet.InLinesG, sheet.OutOfVentsG, sheet.ReserveG, sheet.PotRestG).ShouldBe((3094, 1870, 166, 0, 770, 100));
        Contract.PotMix pot = sheet.Pots.ShouldHaveSingleItem();
        pot.Batch.ShouldBe(new Contract.MixAmount { MixedG = 3000, ResinG = 2400, HardenerG = 600 });
        pot.Pours.ShouldBe([new Contract.BatchPour { TimeS = 0, EarlyTimeS = 0 }, new Contract.BatchPour { TimeS = 300, EarlyTimeS = 200 }]);
        (pot.Name, pot.DrawnG, pot.EmptyTimeS, pot.HasHoldsG, pot.HasRunsDryTimeS, pot.Heat).ShouldBe(("F1", 5130, 2400, false, false, null));
        sheet.Cautions.Count.ShouldBe(5);
    }

    [Fact]
    public void ToContract_SheetWithoutARatio_LeavesOutWhatNobodyKnows()
    {
        Contract.MixSheet sheet = MixSheetMapping.ToContract(SampleSheet.Of());

        (sheet.All.HasResinG, sheet.All.HasHardenerG, sheet.Pots[0].Batch.HasResinG).ShouldBe((false, false, false));
    }

    [Fact]
    public void ToContract_PotThatRunsAway_TellsNoTemperature()
    {
        Contract.PotHeat hot = MixSheetMapping.ToContract(SampleSheet.Of(heat: SampleSheet.Hot)).Pots[0].Heat, cool = MixSheetMapping.ToContract(SampleSheet.Of(heat: SampleSheet.Cool)).Pots[0].Heat;

        (hot.RunsAway, hot.IsBearable, hot.HasWarmestDegC, hot.HasLeftStandingDegC).ShouldBe((true, false, false, false));
        (cool.RunsAway, cool.IsBearable, cool.WarmestDegC, cool.RunsAwayLeftStanding, cool.HasLeftStandingDegC).ShouldBe((false, true, 32.2, true, false));
        (cool.ShopDegC, cool.StayMin, cool.GelsLeftStandingMin, cool.CoolingWPerK).ShouldBe((20, 21, 33.5, 0.9));
    }

    [Fact]
    public void ToInputs_PlanWithWishes_TurnsEveryUnitIntoSi()
    {
        FillInputs inputs = PlanMapping.ToInputs(PlanChecker.Check(StraightStrip.With(plan =>
        {
            plan.Resin.MixRatio = new Contract.MixRatio { PartsByVolume = 40, ResinDensityKgPerM3 = 1150, HardenerDensityKgPerM3 = 950 };
            plan.Mix = new Contract.Mix { ReserveFraction = 0.1, PotRestG = 250, LargestBatchG = 2000, VentsOpenAfterMin = 5, PotCoolingWPerK = 0.6, WarmestPotDegC = 45 };
        })));

        MixInputs mixing = MixInputMapping.ToInputs(inputs);

        mixing.ShouldBe(new MixInputs(1100, 360, new MixWishes(0.1, 0.25, 2, 300, 0.6, 318.15)) { Ratio = MixRatio.OfVolume(40, 1150, 950) });
    }

    [Fact]
    public void ToInputs_PlanWithoutWishes_ShowsTheDefaults()
    {
        FillInputs inputs = PlanMapping.ToInputs(PlanChecker.Check(StraightStrip.Plan()));

        MixInputMapping.ToInputs(inputs).Wishes.ShouldBe(new MixWishes(0.15, 0.1, null, 0, null, 313.15));

        inputs.Plan.Mix.ReserveFraction.ShouldBe(0.15);
    }
}
