using InfusionSim.Physics.Clamps;
using InfusionSim.Physics.Panels;
using InfusionSim.Protocol.Units;
using Contract = InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Plans;

/// <summary>Turns the lines, hoses, pots and gaps of a checked plan into what the physics takes.</summary>
internal static class LineMapping
{
    /// <summary>A feed with its clamp.</summary>
    public static Feed ToFeed(Contract.Feed feed, Clamp clamp) => new(feed.Name, PlanMapping.ToPath(feed.Path), UnitConversion.MetresFromMm(feed.ContactWidthMm))
    {
        Bore = feed.HasBoreMm ? UnitConversion.MetresFromMm(feed.BoreMm) : null,
        Hose = ToHose(feed.Hose),
        Pot = feed.Pot.Length > 0 ? feed.Pot : null,
        Clamp = clamp,
    };

    /// <summary>A vent with its clamp.</summary>
    public static Vent ToVent(Contract.Vent vent, Clamp clamp) => new(vent.Name, PlanMapping.ToPath(vent.Path), UnitConversion.MetresFromMm(vent.ContactWidthMm), ToKind(vent.Kind))
    {
        Bore = vent.HasBoreMm ? UnitConversion.MetresFromMm(vent.BoreMm) : null,
        Hose = ToHose(vent.Hose),
        Clamp = clamp,
    };

    /// <summary>A gap.</summary>
    public static Gap ToGap(Contract.Gap gap) => new(
        gap.Name, PlanMapping.ToPath(gap.Path), UnitConversion.MetresFromMm(gap.WidthMm), gap.HasHeightMm ? UnitConversion.MetresFromMm(gap.HeightMm) : null);

    /// <summary>A pot.</summary>
    public static Pot ToPot(Contract.Pot pot) => new(pot.Name, UnitConversion.MetresFromMm(pot.LevelMm), ToHose(pot.Hose))
    {
        Mass = pot.HasMassG ? UnitConversion.KilogramsFromGrams(pot.MassG) : null,
    };

    private static Hose? ToHose(Contract.Hose? hose) => hose is null
        ? null
        : new Hose(UnitConversion.MetresFromMm(hose.BoreMm), hose.LengthM, hose.Primed, hose.JoinsAt is null ? null : PlanMapping.ToPoint(hose.JoinsAt));

    private static VentKind ToKind(Contract.VentKind kind) => kind switch
    {
        Contract.VentKind.Membrane => VentKind.Membrane,
        Contract.VentKind.Tube or Contract.VentKind.Unspecified => VentKind.Tube,
        _ => throw new ArgumentException($"{kind} is no kind of vent.", nameof(kind)),
    };
}
