using InfusionSim.Physics.Vacuum;
using InfusionSim.Protocol.Resins;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Plans;

/// <summary>What holds where a plan says nothing. The checked plan carries these values, so that they can be seen.</summary>
public static class PlanDefaults
{
    /// <summary>Uncertainty of the permeability, times or divided by [-] (common practice).</summary>
    public const double PermeabilityFactor = 1.5;

    /// <summary>Share of K1 that K3 of cloth has [-] (common practice); changes nothing without layers.</summary>
    public const double ThroughThicknessShare = 0.01;

    /// <summary>Share of K1 that K3 of a flow mesh or a flow-through core has [-]: as open through its thickness as along it (our own judgement).</summary>
    public const double OpenThroughShare = 1;

    /// <summary>Share of the lay-up that lies under a core [-]: as thick a skin on either side.</summary>
    public const double ToolSkinFraction = 0.5;

    /// <summary>Width of a line or diameter of a fitting where it touches the cloth [mm].</summary>
    public const double ContactWidthMm = 12;

    /// <summary>Standard pressure of the air [mbar]. Source: ISO 2533 Standard Atmosphere, sea level (from memory).</summary>
    public const double StandardAmbientMbarAbs = 1013.25;

    /// <summary>Largest dry spot that may stay [mm²] (common practice).</summary>
    public const double LargestDrySpotMm2 = 100;

    /// <summary>Least ratio of time to gel over time to fill [-].</summary>
    public const double SmallestGelMarginRatio = 1;

    /// <summary>Share that is mixed on top of what is drawn [-] (common practice).</summary>
    public const double ReserveFraction = 0.15;

    /// <summary>What stays in each pot [g] (common practice).</summary>
    public const double PotRestG = 100;

    /// <summary>How warm a pot may become while resin is drawn from it [°C] (our own judgement: warm to the hand, and still slow).</summary>
    public const double WarmestPotDegC = 40;

    /// <summary>Pressure of the air in the shop [mbar].</summary>
    /// <param name="plan">The plan: its barometer counts first, then the height of its shop; may be null.</param>
    public static double AmbientMbarAbs(InfusionPlan? plan)
    {
        if (plan?.Bag is { HasAmbientMbarAbs: true, AmbientMbarAbs: >= 400 and <= 1100 }) return plan.Bag.AmbientMbarAbs;
        return plan?.Shop is { HasAltitudeM: true, AltitudeM: >= StandardAtmosphere.LowestAltitude and <= StandardAtmosphere.HighestAltitude }
            ? Units.UnitConversion.MbarFromPascal(StandardAtmosphere.PressureAt(plan.Shop.AltitudeM))
            : StandardAmbientMbarAbs;
    }

    /// <summary>Fills in everything that a sound plan leaves out, except the size of the squares.</summary>
    /// <param name="plan">The plan; changed in place.</param>
    public static void FillIn(InfusionPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        PlanNames.FillIn(plan);
        if (plan.Preform is Preform preform)
        {
            if (!preform.HasPermeabilityFactor) preform.PermeabilityFactor = PermeabilityFactor;
            foreach (Zone zone in preform.Zones) FillIn(zone);
        }

        foreach (Feed feed in plan.Feeds)
            if (!feed.HasContactWidthMm) feed.ContactWidthMm = ContactWidthMm;
        foreach (Vent vent in plan.Vents)
        {
            if (!vent.HasContactWidthMm) vent.ContactWidthMm = ContactWidthMm;
            if (vent.Kind == VentKind.Unspecified) vent.Kind = VentKind.Tube;
        }

        FillInLayers(plan);
        foreach (Pot pot in plan.Pots)
            if (!pot.HasLevelMm) pot.LevelMm = 0;
        if (plan.Slope is { HasUphillDeg: false } slope) slope.UphillDeg = 0;

        if (plan.Resin is { HasMixToOpenMin: false } resin) resin.MixToOpenMin = 0;
        if (plan.Resin is { HasSurfaceTensionMnPerM: true, HasContactAngleDeg: false } wetting) wetting.ContactAngleDeg = 0;
        ShopDefaults.FillIn(plan);
        if (plan.Mix is not null) FillIn(plan.Mix);
        if (plan.Bag is { HasAmbientMbarAbs: false } bag) bag.AmbientMbarAbs = AmbientMbarAbs(plan);
        if (plan.Bag is { HasPressureMbarAbs: false } pumped && BagMapping.HeldMbarAbs(pumped) is double held) pumped.PressureMbarAbs = held;
        plan.Goals ??= new Goals();
        if (!plan.Goals.HasLargestDrySpotMm2) plan.Goals.LargestDrySpotMm2 = LargestDrySpotMm2;
        if (!plan.Goals.HasSmallestGelMarginRatio) plan.Goals.SmallestGelMarginRatio = SmallestGelMarginRatio;
    }

    /// <summary>Fills in what a plan leaves out about mixing.</summary>
    /// <param name="mix">The wishes; changed in place.</param>
    public static void FillIn(Mix mix)
    {
        ArgumentNullException.ThrowIfNull(mix);
        if (!mix.HasReserveFraction) mix.ReserveFraction = ReserveFraction;
        if (!mix.HasPotRestG) mix.PotRestG = PotRestG;
        if (!mix.HasVentsOpenAfterMin) mix.VentsOpenAfterMin = 0;
        if (!mix.HasWarmestPotDegC) mix.WarmestPotDegC = WarmestPotDegC;
    }

    private static void FillInLayers(InfusionPlan plan)
    {
        foreach (FlowMesh mesh in plan.FlowMeshes)
        {
            if (mesh.Face == PanelFace.Unspecified) mesh.Face = PanelFace.BagSide;
            FillIn(mesh.Permeability, OpenThroughShare);
        }

        FillIn(plan.PeelPly?.Permeability, ThroughThicknessShare);
        foreach (Core core in plan.Cores)
        {
            if (!core.HasToolSkinFraction) core.ToolSkinFraction = ToolSkinFraction;
            if (core.Grooves is { HasAngleDeg: false } grooves) grooves.AngleDeg = 0;
            FillIn(core.Permeability, OpenThroughShare);
        }
    }

    private static void FillIn(Zone zone)
    {
        FillIn(zone.Permeability, ThroughThicknessShare);
        if (zone.LayUp is not LayUp layUp) return;
        foreach (Ply ply in layUp.Plies)
        {
            if (!ply.HasCount) ply.Count = 1;
            if (!ply.HasAngleDeg) ply.AngleDeg = 0;
            if (!ply.HasThicknessMm && PlyThickness.FromFibresMm(ply, zone) is double thickness) ply.ThicknessMm = thickness;
            FillIn(ply.Permeability, ThroughThicknessShare);
        }

        if (!zone.HasThicknessMm && layUp.Plies.Count > 0 && layUp.Plies.All(ply => ply.HasThicknessMm))
            zone.ThicknessMm = Units.UnitConversion.Kept(layUp.Plies.Sum(ply => ply.Count * ply.ThicknessMm));
    }

    private static void FillIn(Permeability? permeability, double throughShare)
    {
        if (permeability is not { HasK1M2: true }) return;
        if (!permeability.HasK2M2) permeability.K2M2 = permeability.K1M2;
        if (!permeability.HasK3M2) permeability.K3M2 = throughShare * permeability.K1M2;
        if (!permeability.HasAngleDeg) permeability.AngleDeg = 0;
    }
}
