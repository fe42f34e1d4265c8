using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Air;
using InfusionSim.Physics.Bleeding;
using InfusionSim.Physics.Clock;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Quality;

namespace InfusionSim.Physics.Forecasts;

/// <summary>Where the resin goes and when: the meeting of a fill map with a drive clock. Every time counts from the opening of the first feed.</summary>
public sealed record Forecast
{
    /// <summary>How it ends.</summary>
    public required Outcome Outcome { get; init; }

    /// <summary>Everything worth knowing, worst first.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }

    /// <summary>When the last place that can fill is full [s]; null when it gels first or stops short.</summary>
    public required double? FillTime { get; init; }

    /// <summary>When the resin gels [s].</summary>
    public required double GelTime { get; init; }

    /// <summary>Gel time less fill time [s]; null when there is no fill time.</summary>
    public double? SpareTime => FillTime is double fill ? GelTime - fill : null;

    /// <summary>Drive clock at gel over drive clock at the end of the fill [-]; null when it stops short.</summary>
    public required double? GelMargin { get; init; }

    /// <summary>When the last place that can fill is full, or gel [s].</summary>
    public required double EndTime { get; init; }

    /// <summary>Drive clock at that moment [-].</summary>
    public double EndClock { get; init; }

    /// <summary>What two shots in three do.</summary>
    public required LikelyBand Likely { get; init; }

    /// <summary>Share of the pore volume that is full at the end [-].</summary>
    public required double FilledFraction { get; init; }

    /// <summary>Place that fills last [m]; null when no place can fill.</summary>
    public required Point2? LastToFill { get; init; }

    /// <summary>How high above the lowest feed the resin stands at the end [m]; null when no part of the panel lies too high for it.</summary>
    public double? HeightReached { get; init; }

    /// <summary>Places that stay dry, largest first.</summary>
    public required IReadOnlyList<DrySpot> DrySpots { get; init; }

    /// <summary>Arrival at each timing mark of the panel on the side one sees through the bag, in its order [s]; null where it never comes.</summary>
    public required IReadOnlyList<double?> TimingMarkArrivals { get; init; }

    /// <summary>Arrival on the mould under each timing mark of the panel, in its order [s]; null where it never comes.</summary>
    public IReadOnlyList<double?> ToolSideMarkArrivals { get => field ?? TimingMarkArrivals; init; }

    /// <summary>Volume that cloth and gaps have taken from each feed up to the end, in the panel's order [m³].</summary>
    public required IReadOnlyList<double> ResinIn { get; init; }

    /// <summary>Volume drawn on top of that, which stands in the hose and line of each feed at the end, in the panel's order [m³]; the hose of a pot counts with the first feed it serves; empty without bores and hoses.</summary>
    public IReadOnlyList<double> FeedLineVolumes { get; init; } = [];

    /// <summary>Pressure along the line of each feed, in the panel's order; null where it is the full one all along.</summary>
    public IReadOnlyList<LineForecast?> FeedLines { get; init; } = [];

    /// <summary>Pressure along the line of each vent, in the panel's order; null where it is the bag's all along, and while the line is dry.</summary>
    public IReadOnlyList<LineForecast?> VentLines { get; init; } = [];

    /// <summary>Resin that was drawn from the pots and stands in feed lines, vent lines and their hoses at the end [m³].</summary>
    public double ResinInLines { get; init; }

    /// <summary>What happens at each vent, in the panel's order.</summary>
    public required IReadOnlyList<VentForecast> Vents { get; init; }

    /// <summary>Resin in laminate, core and gaps at the end [m³].</summary>
    public required double ResinInPreform { get; init; }

    /// <summary>Resin in mesh and peel ply at the end, which come off the part [m³].</summary>
    public double ResinInMesh { get; init; }

    /// <summary>How far the tool side stays behind; null for a panel of one layer.</summary>
    public LagForecast? Lag { get; init; }

    /// <summary>Resin in, less resin out, less resin in the cloth, over resin in [-].</summary>
    public required double MassBalanceError { get; init; }

    /// <summary>How far the fill time may be off from the squares alone [-].</summary>
    public required double NumericalError { get; init; }

    /// <summary>What is done with clamps and vacuum before the resin gels, in order of time.</summary>
    public IReadOnlyList<ClampEvent> ClampEvents { get; init; } = [];

    /// <summary>What becomes of the vacuum.</summary>
    public BagForecast Bag { get; init; } = BagForecast.Nothing;

    /// <summary>Where the resin goes, for pictures.</summary>
    public required FillMap Map { get; init; }

    /// <summary>When it gets there.</summary>
    public required DriveClock Clock { get; init; }

    /// <summary>Time at which the front passes the middle of each cell on the side one sees through the bag [s]; +∞ where it never does or not before the end; NaN without cloth. [rows × columns], x fastest.</summary>
    public required double[] ArrivalTimes { get; init; }

    /// <summary>The same on the mould, in the lowest layer of laminate [s]. [rows × columns], x fastest.</summary>
    public double[] ToolSideArrivalTimes { get => field ?? ArrivalTimes; init; }

    /// <summary>How well the panel is wetted, place by place; null for a forecast made by hand in a test.</summary>
    public FillQuality? Quality { get; init; }

    /// <summary>What open vents do after the front has arrived; null when the panel does not fill, or no vent passes resin then.</summary>
    public AfterFront? AfterFront { get; init; }
}
