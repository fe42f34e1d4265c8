using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.Plans;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Tests.Plans;

/// <summary>The straight strip with everything a real lay-up has: flow mesh, peel ply, core, gap, hoses, a pot, a slope, plies.</summary>
internal static class RealLayUp
{
    public static InfusionPlan Plan() => StraightStrip.With(plan =>
    {
        plan.FlowMeshes.Add(Mesh());
        plan.PeelPly = new PeelPly { ThicknessMm = 0.2, Porosity = 0.5, Permeability = new Permeability { K1M2 = 1e-10, K3M2 = 1e-12 } };
        plan.Cores.Add(new Core
        {
            ThicknessMm = 15,
            Area = StraightStrip.RingOf((100, 100), (500, 100), (500, 300), (100, 300)),
            Grooves = new Grooves { WidthMm = 2, DepthMm = 2, PitchMm = 20, BothWays = true },
            Holes = new Holes { DiameterMm = 3, PitchMm = 40 },
        });
        plan.Gaps.Add(new Gap { Path = StraightStrip.PathOf((0, 390), (600, 390)), WidthMm = 2 });
        plan.Feeds[0].BoreMm = 10;
        plan.Feeds[0].Hose = new Hose { BoreMm = 8, LengthM = 2, JoinsAt = StraightStrip.At(0, 200) };
        plan.Feeds[0].Pot = "Pot1";
        plan.Vents[0].BoreMm = 8;
        plan.Vents[0].Hose = new Hose { BoreMm = 8, LengthM = 3 };
        plan.Pots.Add(new Pot { Hose = new Hose { BoreMm = 12, LengthM = 1, Primed = true }, LevelMm = -300 });
        plan.Slope = new Slope { AngleDeg = 20 };
        plan.Resolution.SubLayers = 5;
    });

    public static FlowMesh Mesh() => new()
    {
        Area = StraightStrip.RingOf((0, 0), (500, 0), (500, 400), (0, 400)),
        ThicknessMm = 1,
        Porosity = 0.85,
        Permeability = new Permeability { K1M2 = 3e-9 },
    };

    public static Ply Ply(double angleDeg, double thicknessMm = 0.6) => new()
    {
        Cloth = "biaxial",
        AngleDeg = angleDeg,
        ThicknessMm = thicknessMm,
        Permeability = new Permeability { K1M2 = 4e-10, K2M2 = 1e-10 },
    };

    public static InfusionPlan With(Action<InfusionPlan> change)
    {
        InfusionPlan plan = Plan();
        change(plan);
        return plan;
    }

    /// <summary>What keeps a plan from being computed, apart from effects that this version does not compute.</summary>
    public static IReadOnlyList<Fault> FaultsOf(InfusionPlan plan) =>
        [.. PlanChecker.Check(plan).Faults.Where(fault => fault.Reason != ErrorReason.NotComputedYet)];
}
