using Google.Protobuf.Collections;
using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Clamps;
using InfusionSim.Physics.Panels;
using InfusionSim.Physics.Vacuum;
using InfusionSim.Protocol.Resins;
using InfusionSim.Protocol.Units;
using Contract = InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Plans;

/// <summary>Turns a checked plan into what the physics takes: other types, SI units, nothing added and nothing lost.</summary>
public static class PlanMapping
{
    /// <summary>Maps a sound plan.</summary>
    /// <param name="check">The check of the plan.</param>
    /// <exception cref="ArgumentException">When the plan has faults.</exception>
    public static FillInputs ToInputs(PlanCheck check)
    {
        ArgumentNullException.ThrowIfNull(check);
        if (!check.IsSound) throw new ArgumentException("A plan with faults cannot be mapped.", nameof(check));
        Contract.InfusionPlan plan = check.Plan;
        Physics.Resins.Resin resin = ResinMapping.ToResin(plan) with
        {
            Volatiles = VolatilesOf(plan.Resin),
            Wetting = Forecasts.QualityMapping.ToWetting(plan.Resin),
        };
        return new FillInputs(plan, ToPanel(plan), resin, BagMapping.ToBag(plan.Bag), ToGoals(plan.Goals), plan.Preform.PermeabilityFactor);
    }

    /// <summary>The panel of a plan that has its defaults and no faults.</summary>
    /// <param name="plan">The plan.</param>
    internal static Panel ToPanel(Contract.InfusionPlan plan)
    {
        Clamp[] clamps = [.. ClampedLine.Of(plan).Select(ClampMapping.ToClamp)];
        return new(
            RegionOf(plan.Preform),
            [.. plan.Preform.Zones.Select(LayerMapping.ToZone)],
            [.. plan.Feeds.Select((feed, k) => LineMapping.ToFeed(feed, clamps[k]))],
            [.. plan.Vents.Select((vent, k) => LineMapping.ToVent(vent, clamps[plan.Feeds.Count + k]))],
            [.. plan.TimingMarks.Select(mark => new TimingMark(mark.Name, ToPoint(mark.At)))],
            UnitConversion.MetresFromMm(plan.Resolution.CellMm))
        {
            FlowMeshes = [.. plan.FlowMeshes.Select(LayerMapping.ToMesh)],
            Cores = [.. plan.Cores.Select(LayerMapping.ToCore)],
            PeelPly = plan.PeelPly is null ? null : LayerMapping.ToPeelPly(plan.PeelPly),
            Gaps = [.. plan.Gaps.Select(LineMapping.ToGap)],
            Pots = [.. plan.Pots.Select(LineMapping.ToPot)],
            SubLayers = plan.Resolution.HasSubLayers ? plan.Resolution.SubLayers : null,
            Slope = plan.Slope is null ? null : new Slope(UnitConversion.RadiansFromDeg(plan.Slope.UphillDeg), UnitConversion.RadiansFromDeg(plan.Slope.AngleDeg)),
        };
    }

    /// <summary>Outline and cut-outs [m].</summary>
    /// <param name="preform">A preform whose rings have at least three corners each.</param>
    public static Region RegionOf(Contract.Preform preform)
    {
        ArgumentNullException.ThrowIfNull(preform);
        return new Region(ToRing(preform.Outline), [.. preform.Cutouts.Select(ToRing)]);
    }

    /// <summary>A ring [m]; a last corner that repeats the first is dropped, as are corners that repeat the one before.</summary>
    /// <param name="ring">A ring with at least three corners.</param>
    public static Ring ToRing(Contract.Ring ring)
    {
        ArgumentNullException.ThrowIfNull(ring);
        List<Point2> corners = WithoutRepeats(ring.Points);
        if (corners.Count > 1 && corners[0] == corners[^1]) corners.RemoveAt(corners.Count - 1);
        return new Ring(corners);
    }

    /// <summary>A line or fitting [m]; points that repeat the one before are dropped.</summary>
    /// <param name="path">A path with at least one point.</param>
    public static LinePath ToPath(Contract.Path path)
    {
        ArgumentNullException.ThrowIfNull(path);
        return new LinePath(WithoutRepeats(path.Points));
    }

    /// <summary>A place [m].</summary>
    /// <param name="point">A place with both coordinates.</param>
    public static Point2 ToPoint(Contract.Point point)
    {
        ArgumentNullException.ThrowIfNull(point);
        return new Point2(UnitConversion.MetresFromMm(point.XMm), UnitConversion.MetresFromMm(point.YMm));
    }

    private static List<Point2> WithoutRepeats(RepeatedField<Contract.Point> points)
    {
        var kept = new List<Point2>(points.Count);
        foreach (Point2 point in points.Select(ToPoint))
            if (kept.Count == 0 || kept[^1] != point) kept.Add(point);
        return kept;
    }

    private static IReadOnlyList<VolatileComponent> VolatilesOf(Contract.Resin resin) =>
        resin.Volatiles.Count == 0 ? [] : [.. resin.Volatiles.Select(static one => new VolatileComponent(ToKind(one.Kind), one.MoleFraction))];

    private static VolatileKind ToKind(Contract.VolatileKind kind) => kind switch
    {
        Contract.VolatileKind.Styrene => VolatileKind.Styrene,
        Contract.VolatileKind.Water => VolatileKind.Water,
        _ => throw new ArgumentException($"{kind} is no component of a resin.", nameof(kind)),
    };

    private static Physics.Forecasts.Goals ToGoals(Contract.Goals goals) => new(
        UnitConversion.SquareMetresFromMm2(goals.LargestDrySpotMm2),
        goals.SmallestGelMarginRatio,
        goals.HasMostResinOutCm3 ? UnitConversion.CubicMetresFromCm3(goals.MostResinOutCm3) : double.PositiveInfinity);
}
