using InfusionSim.Protocol.V1;

namespace InfusionSim.Service.Tests.Transport;

/// <summary>One slip in a sound plan, and what must be said about it.</summary>
/// <param name="Change">Makes the slip.</param>
/// <param name="Path">Where it must be named.</param>
/// <param name="Reason">The reason of the answer.</param>
/// <param name="FitsJson">Whether it can be written as JSON at all.</param>
internal sealed record BadPlan(Action<InfusionPlan> Change, string Path, ErrorReason Reason = ErrorReason.PlanInvalid, bool FitsJson = true);

/// <summary>The slips that people and programs make.</summary>
internal static class BadPlans
{
    public static IReadOnlyDictionary<string, BadPlan> All { get; } = new Dictionary<string, BadPlan>
    {
        ["outline crosses itself"] = new(plan => Outline(plan, (0, 0), (600, 400), (600, 0), (0, 400)), "preform.outline"),
        ["outline without area"] = new(plan => Outline(plan, (0, 0), (300, 0), (600, 0)), "preform.outline"),
        ["outline of two corners"] = new(plan => Outline(plan, (0, 0), (600, 0)), "preform.outline.points"),
        ["cut-out outside"] = new(plan => Cutout(plan, (700, 100), (800, 100), (800, 200)), "preform.cutouts[0]"),
        ["cut-out touches the outline"] = new(plan => Cutout(plan, (100, 0), (200, 0), (150, 100)), "preform.cutouts[0]"),
        ["cut-out crosses the outline"] = new(plan => Cutout(plan, (500, 100), (700, 100), (600, 200)), "preform.cutouts[0]"),
        ["cut-outs meet"] = new(plan =>
        {
            Cutout(plan, (100, 100), (200, 100), (150, 200));
            Cutout(plan, (150, 100), (250, 100), (200, 200));
        }, "preform.cutouts[0]"),
        ["mix ratio by volume without densities"] = new(plan => plan.Resin.MixRatio = new MixRatio { PartsByVolume = 40 }, "resin.mixRatio.hardenerDensityKgPerM3"),
        ["mix ratio that is no number"] = new(plan => plan.Resin.MixRatio = new MixRatio { PartsByMass = double.NaN }, "resin.mixRatio.partsByMass", FitsJson: false),
        ["feed outside"] = new(plan => plan.Feeds[0].Path = Path((-50, 0), (-50, 400)), "feeds[0].path"),
        ["vent outside"] = new(plan => plan.Vents[0].Path = Path((700, 200)), "vents[0].path"),
        ["feed in a cut-out"] = new(plan =>
        {
            Cutout(plan, (200, 100), (400, 100), (400, 300), (200, 300));
            plan.Feeds[0].Path = Path((300, 200));
        }, "feeds[0].path"),
        ["mark in a cut-out"] = new(plan => Cutout(plan, (200, 100), (400, 100), (400, 300), (200, 300)), "timingMarks[0].at"),
        ["feed on a vent"] = new(plan => plan.Vents[0].Path = Path((0, 100), (0, 200)), "vents[0].path"),
        ["feed crosses a vent"] = new(plan => plan.Vents[0].Path = Path((0, 200), (600, 200)), "vents[0].path"),
        ["no feed"] = new(plan => plan.Feeds.Clear(), "feeds"),
        ["feed without points"] = new(plan => plan.Feeds[0].Path.Points.Clear(), "feeds[0].path.points"),
        ["line of no length"] = new(plan => plan.Feeds[0].Path = Path((0, 0), (0, 0)), "feeds[0].path"),
        ["not a number"] = new(plan => plan.Resin.ViscosityPaS = double.NaN, "resin.viscosityPaS", FitsJson: false),
        ["infinite"] = new(plan => plan.Preform.Zones[0].ThicknessMm = double.PositiveInfinity, "preform.zones[0].thicknessMm", FitsJson: false),
        ["negative"] = new(plan => plan.Preform.Zones[0].Permeability.K1M2 = -1e-10, "preform.zones[0].permeability.k1M2"),
        ["metres for millimetres"] = new(plan => Outline(plan, (0, 0), (1.2, 0), (1.2, 0.6), (0, 0.6)), "preform.outline"),
        ["viscosity in mPa·s"] = new(plan => plan.Resin.ViscosityPaS = 300, "resin.viscosityPaS"),
        ["gauge pressure"] = new(plan => plan.Bag.PressureMbarAbs = -950, "bag.pressureMbarAbs"),
        ["no vacuum"] = new(plan => plan.Bag.PressureMbarAbs = 1020, "bag.pressureMbarAbs"),
        ["both porosity and fibre volume fraction"] = new(plan => plan.Preform.Zones[0].FibreVolumeFraction = 0.5, "preform.zones[0].fibreVolumeFraction"),
        ["neither porosity nor fibre volume fraction"] = new(plan => plan.Preform.Zones[0].ClearPorosity(), "preform.zones[0].porosity"),
        ["gels before it opens"] = new(plan => plan.Resin.MixToOpenMin = 90, "resin.mixToOpenMin"),
        ["factor below 1"] = new(plan => plan.Preform.PermeabilityFactor = 0.5, "preform.permeabilityFactor"),
        ["zones leave a place open"] = new(plan => plan.Preform.Zones[0].Area = RingOf((0, 0), (300, 0), (300, 400), (0, 400)), "preform.zones"),
        ["zone with an empty area"] = new(plan => plan.Preform.Zones[0].Area = new Ring(), "preform.zones[0].area.points"),
        ["two of one name"] = new(plan => plan.Vents[0].Name = "F1", "vents[0].name"),
        ["grid beyond the limit"] = new(plan => plan.Resolution.CellMm = 0.1, "resolution.cellMm", ErrorReason.TooLarge),
        ["cell larger than the panel"] = new(plan => plan.Resolution.CellMm = 500, "resolution.cellMm"),
        ["cores at two heights"] = new(plan => plan.Cores.Add([Slit(0.5), Slit(0.3)]), "cores[1].toolSkinFraction", ErrorReason.NotComputedYet),
        ["mesh off the cloth"] = new(plan => plan.FlowMeshes.Add(Mesh((700, 0), (800, 0), (800, 400))), "flowMeshes[0].area"),
        ["mesh in per cent"] = new(plan => With(plan, mesh => mesh.Porosity = 85), "flowMeshes[0].porosity"),
        ["mesh of no side"] = new(plan => With(plan, mesh => mesh.Face = (PanelFace)7), "flowMeshes[0].face", FitsJson: false),
        ["core that says nothing"] = new(plan => plan.Cores.Add(new Core { ThicknessMm = 10 }), "cores[0]"),
        ["grooves that overlap"] = new(plan => plan.Cores.Add(new Core { ThicknessMm = 10, Grooves = new Grooves { WidthMm = 20, DepthMm = 2, PitchMm = 10 } }), "cores[0].grooves.widthMm"),
        ["bore of many squares"] = new(plan => plan.Feeds[0].BoreMm = 25, "feeds[0].boreMm"),
        ["hose in millimetres"] = new(plan => plan.Feeds[0].Hose = new Hose { BoreMm = 8, LengthM = 2000 }, "feeds[0].hose.lengthM"),
        ["pot that is not there"] = new(plan => plan.Feeds[0].Pot = "pail", "feeds[0].pot"),
        ["line that doubles back"] = new(plan => plan.Feeds[0].Path = Path((0, 0), (0, 400), (0, 100)), "feeds[0].path"),
        ["gap off the cloth"] = new(plan => plan.Gaps.Add(new Gap { Path = Path((0, 500), (600, 500)), WidthMm = 2 }), "gaps[0].path"),
        ["slope beyond upright"] = new(plan => plan.Slope = new Slope { AngleDeg = 120 }, "slope.angleDeg"),
        ["anisotropy beyond 100"] = new(plan => plan.Preform.Zones[0].Permeability.K2M2 = 1e-13, "preform.zones[0].permeability.k2M2"),
        ["plies of none"] = new(plan => plan.Preform.Zones[0].LayUp = new LayUp(), "preform.zones[0].layUp.plies"),
        ["layers beyond the limit"] = new(plan => plan.Resolution.SubLayers = 0, "resolution.subLayers"),
        ["places beyond the limit"] = new(plan => (plan.Resolution.CellMm, plan.Resolution.SubLayers) = (1, 20), "resolution", ErrorReason.TooLarge),
        ["too many feeds"] = new(plan => plan.Feeds.AddRange(Enumerable.Range(0, 200).Select(_ => plan.Feeds[0].Clone())), "feeds", ErrorReason.TooLarge),
    };

    private static void Outline(InfusionPlan plan, params (double X, double Y)[] corners) => plan.Preform.Outline = RingOf(corners);

    private static void Cutout(InfusionPlan plan, params (double X, double Y)[] corners) => plan.Preform.Cutouts.Add(RingOf(corners));

    private static FlowMesh Mesh(params (double X, double Y)[] corners) => new()
    {
        Area = corners.Length == 0 ? null : RingOf(corners),
        ThicknessMm = 1,
        Porosity = 0.85,
        Permeability = new Permeability { K1M2 = 3e-9 },
    };

    private static Core Slit(double share) => new()
    {
        ThicknessMm = 10,
        ToolSkinFraction = share,
        Grooves = new Grooves { WidthMm = 1, DepthMm = 10, PitchMm = 20 },
    };

    private static void With(InfusionPlan plan, Action<FlowMesh> change)
    {
        FlowMesh mesh = Mesh();
        change(mesh);
        plan.FlowMeshes.Add(mesh);
    }

    private static Ring RingOf(params (double X, double Y)[] corners) => new() { Points = { corners.Select(At) } };

    private static Protocol.V1.Path Path(params (double X, double Y)[] points) => new() { Points = { points.Select(At) } };

    private static Point At((double X, double Y) place) => new() { XMm = place.X, YMm = place.Y };
}
