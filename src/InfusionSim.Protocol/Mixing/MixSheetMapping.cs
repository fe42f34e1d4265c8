using InfusionSim.Planning.Mixing;
using InfusionSim.Protocol.Forecasts;
using InfusionSim.Protocol.Units;
using InfusionSim.Protocol.Words;
using Contract = InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Mixing;

/// <summary>Turns a mix sheet into the contract's: units added, what is not known left out.</summary>
public static class MixSheetMapping
{
    /// <summary>Maps a mix sheet.</summary>
    /// <param name="sheet">The sheet.</param>
    public static Contract.MixSheet ToContract(MixSheet sheet)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        var answer = new Contract.MixSheet
        {
            All = ToAmount(sheet.Mixed, sheet.Ratio),
            InPartG = Grams(sheet.Need.InPart),
            InMeshG = Grams(sheet.Need.InMesh),
            InLinesG = Grams(sheet.Need.InLines),
            OutOfVentsG = Grams(sheet.Need.OutOfVents),
            ReserveG = Grams(sheet.Reserve),
            PotRestG = Grams(sheet.PotRests),
            Pots = { sheet.Pots.Select(pot => ToPot(pot, sheet.Ratio)) },
        };
        answer.Cautions.AddRange(MixCautions.Lines(answer));
        return answer;
    }

    private static Contract.PotMix ToPot(PotPlan pot, MixRatio? ratio)
    {
        var answer = new Contract.PotMix
        {
            Name = pot.Name,
            All = ToAmount(pot.Mixed, ratio),
            DrawnG = Grams(pot.Drawn),
            Batch = pot.Pours.Count > 0 ? ToAmount(pot.Batch, ratio) : null,
            Pours = { pot.Pours.Select(ToPour) },
            Heat = pot.Heat is PotHeat heat ? ToHeat(heat) : null,
        };
        if (pot.EmptyTime is double empty) answer.EmptyTimeS = UnitConversion.Kept(empty);
        if (pot.Holds is double holds) answer.HoldsG = Grams(holds);
        if (pot.RunsDryTime is double dry) answer.RunsDryTimeS = UnitConversion.Kept(dry);
        return answer;
    }

    private static Contract.BatchPour ToPour(BatchPour pour)
    {
        var answer = new Contract.BatchPour();
        if (pour.Time is double time) answer.TimeS = UnitConversion.Kept(time);
        if (pour.Early is double early) answer.EarlyTimeS = UnitConversion.Kept(early);
        return answer;
    }

    private static Contract.PotHeat ToHeat(PotHeat heat)
    {
        var answer = new Contract.PotHeat
        {
            CoolingWPerK = UnitConversion.Kept(heat.Cooling),
            ShopDegC = UnitConversion.DegCFromKelvin(heat.Shop),
            StayMin = UnitConversion.MinFromSeconds(heat.Stay),
            IsBearable = heat.IsBearable,
            RunsAway = heat.RunsAway,
            RunsAwayLeftStanding = heat.RunsAwayLeftStanding,
        };
        if (!heat.RunsAway) answer.WarmestDegC = UnitConversion.DegCFromKelvin(heat.Warmest);
        if (!heat.RunsAwayLeftStanding) answer.LeftStandingDegC = UnitConversion.DegCFromKelvin(heat.LeftStanding);
        if (double.IsFinite(heat.GelsLeftStanding)) answer.GelsLeftStandingMin = UnitConversion.MinFromSeconds(heat.GelsLeftStanding);
        return answer;
    }

    private static Contract.MixAmount ToAmount(double mixed, MixRatio? ratio)
    {
        var amount = new Contract.MixAmount { MixedG = Grams(mixed) };
        if (ratio?.Weigh(mixed) is not WeighedOut weighed) return amount;
        amount.ResinG = Grams(weighed.Resin);
        amount.HardenerG = Grams(weighed.Hardener);
        return amount;
    }

    private static double Grams(double kilograms) => UnitConversion.GramsFromKilograms(Finite.Needed(kilograms, "a mass to mix"));
}
