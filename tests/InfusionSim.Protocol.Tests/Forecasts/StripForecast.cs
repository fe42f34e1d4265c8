using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Forecasts;
using InfusionSim.Protocol.Plans;
using InfusionSim.Protocol.Tests.Plans;

namespace InfusionSim.Protocol.Tests.Forecasts;

/// <summary>A forecast of the straight strip as the closed form has it, put together by hand.</summary>
internal static class StripForecast
{
    // A coarse map: the numbers of the forecast are set below, the map only says where the squares lie.
    private static readonly FillInputs Coarse = PlanMapping.ToInputs(PlanChecker.Check(StraightStrip.With(plan => plan.Resolution.CellMm = 50)));

    private static readonly FillMap Map = FillMap.Compute(FillProblemBuilder.Build(Coarse.Panel));

    public static FillInputs Inputs { get; } = PlanMapping.ToInputs(PlanChecker.Check(StraightStrip.Plan()));

    public static Forecast Build() => new()
    {
        Outcome = Outcome.Fills,
        Findings = [],
        FillTime = 1800,
        GelTime = 3240,
        GelMargin = 1.8,
        EndTime = 1800,
        EndClock = Map.FillClock,
        Likely = new LikelyBand(1.5, 1200, 2700, 1.2, 2.7),
        FilledFraction = 1,
        LastToFill = new Point2(0.5975, 0.0025),
        DrySpots = [],
        TimingMarkArrivals = [450],
        ResinIn = [3.6e-4],
        Vents = [new VentForecast(1800, 1, 0, 1e-7)],
        ResinInPreform = 3.6e-4,
        MassBalanceError = 1e-12,
        NumericalError = 1e-9,
        Map = Map,
        Clock = new(Inputs.Resin, Inputs.Bag),
        ArrivalTimes = [.. Map.Arrival.Select(clock => clock * 1800 / Map.FillClock)],
    };
}
