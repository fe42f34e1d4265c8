using System.Reflection;
using System.Runtime.CompilerServices;
using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Forecasts;
using InfusionSim.Protocol.Plans;
using InfusionSim.Service.Fills;

namespace InfusionSim.Service.Tests.Fills;

/// <summary>Stands in for the physics: a front that runs from left to right in half an hour, and what a test wants to happen on the way.</summary>
internal sealed class StripForecaster : IFillForecaster
{
    public const double FillTime = 1800;

    /// <summary>What happens while a forecast is computed.</summary>
    public Action<IProgress<ForecastProgress>?, CancellationToken> During { get; set; } = (_, _) => { };

    private int _running;

    /// <summary>Forecasts that are being computed right now.</summary>
    public int Running => Volatile.Read(ref _running);

    public Forecast Predict(FillInputs inputs, IProgress<ForecastProgress>? progress, CancellationToken cancellation)
    {
        Interlocked.Increment(ref _running);
        try
        {
            During(progress, cancellation);
            return Build(inputs);
        }
        finally
        {
            Interlocked.Decrement(ref _running);
        }
    }

    public FillState StateAt(Forecast forecast, FillInputs inputs, double time, bool withPressure, CancellationToken cancellation)
    {
        double[] arrival = forecast.ArrivalTimes;
        double[] wet = [.. arrival.Select(when => when <= time ? 1.0 : 0)];
        return new FillState
        {
            Clock = time,
            Saturation = wet,
            AccumulatedPressure = wet,
            Pressure = withPressure ? [.. wet.Select(share => 0.5 * share)] : null,
            FilledFraction = wet.Sum() / wet.Length,
            ResinIn = [3.6e-4 * wet.Sum() / wet.Length],
            ResinOut = [0],
            MassBalanceError = 0,
        };
    }

    private static Forecast Build(FillInputs inputs)
    {
        FillProblem problem = FillProblemBuilder.Build(inputs.Panel);
        double width = problem.Cells.Grid.Columns * problem.Cells.Grid.CellSize;
        double[] times = [.. Enumerable.Range(0, problem.Cells.Grid.CellCount).Select(cell =>
            FillTime * Math.Pow((problem.Cells.CentroidX[cell] - problem.Cells.Grid.Origin.X) / width, 2))];
        return new Forecast
        {
            Outcome = Outcome.Fills,
            Findings = [],
            FillTime = FillTime,
            GelTime = 3240,
            GelMargin = 1.8,
            EndTime = FillTime,
            EndClock = FillTime,
            Likely = new LikelyBand(1.5, 1200, 2700, 1.2, 2.7),
            FilledFraction = 1,
            LastToFill = new Point2(0.5975, 0.0025),
            DrySpots = [],
            TimingMarkArrivals = [.. inputs.Panel.TimingMarks.Select(_ => (double?)450)],
            ResinIn = [.. inputs.Panel.Feeds.Select(_ => 3.6e-4)],
            Vents = [.. inputs.Panel.Vents.Select(_ => new VentForecast(FillTime, 1, 0, 1e-7))],
            ResinInPreform = 3.6e-4,
            MassBalanceError = 1e-12,
            NumericalError = 1e-9,
            Map = MapOf(problem),
            Clock = new(inputs.Resin, inputs.Bag),
            ArrivalTimes = times,
        };
    }

    // Only the physics makes maps; a million squares would take it seconds, and the transport reads nothing but the squares.
    private static FillMap MapOf(FillProblem problem)
    {
        var map = (FillMap)RuntimeHelpers.GetUninitializedObject(typeof(FillMap));
        typeof(FillMap).GetField("<Problem>k__BackingField", BindingFlags.Instance | BindingFlags.NonPublic)!.SetValue(map, problem);
        return map;
    }
}
