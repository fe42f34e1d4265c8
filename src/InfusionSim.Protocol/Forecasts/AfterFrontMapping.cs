using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Bleeding;
using InfusionSim.Physics.Panels;
using InfusionSim.Protocol.Units;
using Contract = InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Forecasts;

/// <summary>Turns what open vents do after the front has arrived into the contract's.</summary>
internal static class AfterFrontMapping
{
    private const string CatchPot = "Catch pot: (resin out + what line and hose hold) × 1.5 to 2, common practice.";

    private const string AirBasis =
        "Trapped air is cut off from every vent: no waiting draws it out, and an open vent lowers the pressure that keeps it small. The catch pot is for what has come by the end. " + CatchPot;

    private const string Basis =
        "What filled last is the last tenth of the part's pore volume, counted as out when nine tenths of it have left at the pace of the resin, all vents open. Bubbles stick and take longer: "
        + "look at the hose. " + CatchPot;

    /// <summary>Maps it.</summary>
    /// <param name="after">What happens.</param>
    /// <param name="panel">The panel, for the names of its vents.</param>
    /// <param name="density">Density of the resin [kg/m³].</param>
    public static Contract.AfterFront ToContract(AfterFront after, Panel panel, double density)
    {
        var answer = new Contract.AfterFront
        {
            ClampTimeS = Kept(after.ClampTime),
            LeftWhenClampedFraction = Kept(after.LeftWhenClamped),
            StaysFraction = Kept(after.Stays),
            StaysAt = after.StaysAt is Point2 at ? ForecastMapping.ToPoint(at) : null,
            AirStays = after.AirStays,
            Basis = after.AirStays ? AirBasis : Basis,
        };
        if (Finite.OrNone(after.LastResinOut) is double last) answer.LastResinOutTimeS = Kept(last);
        if (Finite.OrNone(after.LastResinOutFrom) is double from) answer.LastResinOutTimeFromS = Kept(from);
        if (Finite.OrNone(after.LastResinOutTo) is double to) answer.LastResinOutTimeToS = Kept(to);
        for (int vent = 0; vent < after.Vents.Count; vent++)
            if (after.Vents[vent] is VentBleed bleed) answer.Vents.Add(ToContract(bleed, panel.Vents[vent].Name, density));
        answer.ResinOutGPerMin = UnitConversion.Kept(answer.Vents.Sum(vent => vent.ResinOutGPerMin));
        answer.UntilClampedG = UnitConversion.Kept(answer.Vents.Sum(vent => vent.UntilClampedG));
        answer.CatchPotFromCm3 = UnitConversion.Kept(answer.Vents.Sum(vent => vent.CatchPotFromCm3));
        answer.CatchPotToCm3 = UnitConversion.Kept(answer.Vents.Sum(vent => vent.CatchPotToCm3));
        return answer;
    }

    private static Contract.VentAfterFront ToContract(VentBleed bleed, string name, double density)
    {
        var answer = new Contract.VentAfterFront
        {
            Name = name,
            ResinOutCm3PerMin = UnitConversion.Kept(60 * Cm3(bleed.Rate)),
            ResinOutGPerMin = UnitConversion.Kept(60 * UnitConversion.GramsFrom(bleed.Rate, density)),
            UntilClampedCm3 = Cm3(bleed.UntilClamped),
            UntilClampedG = UnitConversion.GramsFrom(bleed.UntilClamped, density),
            UntilGelCm3 = Cm3(bleed.UntilGel),
            UntilGelG = UnitConversion.GramsFrom(bleed.UntilGel, density),
            HoseVolumeCm3 = Cm3(bleed.HoseVolume),
            CatchPotFromCm3 = Cm3(VentBleed.LeastReserve * bleed.Planned),
            CatchPotToCm3 = Cm3(VentBleed.AmpleReserve * bleed.Planned),
            Points = { bleed.Points.Select(point => new Contract.ResinOutPoint { TimeS = Kept(point.Time), ResinOutCm3 = Cm3(point.Volume) }) },
        };
        if (Finite.OrNone(bleed.ShutTime) is double shut) answer.ShutTimeS = Kept(shut);
        return answer;
    }

    private static double Cm3(double cubicMetres) => UnitConversion.Cm3FromCubicMetres(Finite.Needed(cubicMetres, "a volume after the end"));

    private static double Kept(double value) => UnitConversion.Kept(Finite.Needed(value, "a number after the end"));
}
