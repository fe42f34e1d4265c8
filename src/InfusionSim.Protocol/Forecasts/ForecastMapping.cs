using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Air;
using InfusionSim.Protocol.Plans;
using InfusionSim.Protocol.Units;
using InfusionSim.Protocol.Words;
using Contract = InfusionSim.Protocol.V1;
using Domain = InfusionSim.Physics.Forecasts;

namespace InfusionSim.Protocol.Forecasts;

/// <summary>Turns a forecast of the physics into the contract's: names and units added, numbers that do not exist left out.</summary>
public static class ForecastMapping
{
    /// <summary>Maps a forecast.</summary>
    /// <param name="forecast">The forecast.</param>
    /// <param name="inputs">What it was computed from.</param>
    public static Contract.FillForecast ToContract(Domain.Forecast forecast, FillInputs inputs)
    {
        ArgumentNullException.ThrowIfNull(forecast);
        ArgumentNullException.ThrowIfNull(inputs);
        double density = inputs.Resin.Density;
        var answer = new Contract.FillForecast
        {
            Outcome = ToContract(forecast.Outcome),
            GelTimeS = Needed(forecast.GelTime, "the gel time"),
            EndTimeS = Needed(forecast.EndTime, "the end time"),
            Likely = LikelyBandMapping.ToContract(forecast.Likely, inputs.Plan),
            FilledFraction = Needed(forecast.FilledFraction, "the filled fraction"),
            LastToFill = forecast.LastToFill is Point2 last ? ToPoint(last) : null,
            ResinInPreformCm3 = Cm3(forecast.ResinInPreform, "the resin in the preform"),
            ResinInPreformG = UnitConversion.GramsFrom(forecast.ResinInPreform, density),
            CellsWithCloth = forecast.Map.Problem.Cells.Area.Count(area => area > 0),
            MassBalanceErrorRatio = Needed(forecast.MassBalanceError, "the mass balance"),
            NumericalErrorRatio = Needed(forecast.NumericalError, "the numerical error"),
        };
        if (Kept(forecast.FillTime) is double fill) answer.FillTimeS = fill;
        if (Kept(forecast.SpareTime) is double spare) answer.SpareTimeS = spare;
        if (Kept(forecast.GelMargin) is double margin) answer.GelMarginRatio = margin;
        if (Kept(forecast.HeightReached) is double height) answer.HeightReachedMm = UnitConversion.MmFromMetres(height);

        if (inputs.Panel.FlowMeshes.Count > 0 || inputs.Panel.PeelPly is not null)
        {
            answer.ResinInMeshCm3 = Cm3(forecast.ResinInMesh, "the resin in the mesh");
            answer.ResinInMeshG = UnitConversion.GramsFrom(forecast.ResinInMesh, density);
        }

        LaminateMapping.Add(answer, inputs, forecast.Map.Problem.Cells);
        answer.ClampEvents.AddRange(forecast.ClampEvents.Select(ClampEventMapping.ToContract));
        answer.Bag = BagForecastMapping.ToContract(forecast.Bag, inputs.Bag);
        answer.Resin = ResinForecastMapping.ToContract(forecast, inputs);
        if (forecast.Lag is Domain.LagForecast lag) answer.Lag = LagMapping.ToContract(lag);
        answer.DrySpots.AddRange(forecast.DrySpots.Select(spot => ToDrySpot(spot, forecast.Clock)));
        for (int k = 0; k < inputs.Panel.TimingMarks.Count; k++)
        {
            var mark = new Contract.TimingMarkForecast { Name = inputs.Panel.TimingMarks[k].Name };
            if (Kept(forecast.TimingMarkArrivals[k]) is double arrival) mark.ArrivalTimeS = arrival;
            if (FrontMapMapping.HasLayers(forecast) && Kept(forecast.ToolSideMarkArrivals[k]) is double below) mark.ToolSideArrivalTimeS = below;
            answer.TimingMarks.Add(mark);
        }

        for (int k = 0; k < inputs.Panel.Feeds.Count; k++)
        {
            string name = inputs.Panel.Feeds[k].Name;
            var feed = new Contract.FeedForecast
            {
                Name = name,
                ResinInCm3 = Cm3(forecast.ResinIn[k], $"the resin through {name}"),
                ResinInG = UnitConversion.GramsFrom(forecast.ResinIn[k], density),
                Line = LineForecastMapping.ToContract(forecast.FeedLines, k),
            };
            if (HasLine(inputs, k) && k < forecast.FeedLineVolumes.Count) feed.LineVolumeCm3 = Cm3(forecast.FeedLineVolumes[k], $"the resin in the line of {name}");
            answer.Feeds.Add(feed);
        }

        for (int k = 0; k < inputs.Panel.Vents.Count; k++)
        {
            answer.Vents.Add(ToVent(inputs.Panel.Vents[k].Name, forecast.Vents[k], density));
            answer.Vents[k].Line = LineForecastMapping.ToContract(forecast.VentLines, k);
        }

        if (forecast.Quality is not null) answer.Quality = QualityMapping.ToContract(forecast.Quality);
        if (forecast.AfterFront is not null) answer.AfterFront = AfterFrontMapping.ToContract(forecast.AfterFront, inputs.Panel, density);
        answer.Findings.AddRange(forecast.Findings.Select(FindingMapping.ToContract));
        foreach (Contract.Finding finding in answer.Findings) finding.Sentence = FindingSentences.Of(finding, answer, inputs.Plan);
        return answer;
    }

    /// <summary>A place in the contract's millimetres.</summary>
    /// <param name="point">The place [m].</param>
    public static Contract.Point ToPoint(Point2 point) => new()
    {
        XMm = UnitConversion.MmFromMetres(Needed(point.X, "a place")),
        YMm = UnitConversion.MmFromMetres(Needed(point.Y, "a place")),
    };

    private static Contract.Outcome ToContract(Domain.Outcome outcome) => outcome switch
    {
        Domain.Outcome.Fills => Contract.Outcome.Fills,
        Domain.Outcome.TrapsAir => Contract.Outcome.TrapsAir,
        Domain.Outcome.StopsShort => Contract.Outcome.StopsShort,
        Domain.Outcome.PotRunsDry => Contract.Outcome.PotRunsDry,
        Domain.Outcome.GelsFirst => Contract.Outcome.GelsFirst,
        _ => throw new ArgumentOutOfRangeException(nameof(outcome), outcome, "No such outcome."),
    };

    private static Contract.DrySpot ToDrySpot(DrySpot spot, Physics.Clock.DriveClock clock)
    {
        return new Contract.DrySpot
        {
            At = ToPoint(spot.At),
            AreaMm2 = UnitConversion.Mm2FromSquareMetres(Needed(spot.Area, "a dry area")),
            SealedTimeS = UnitConversion.Kept(Needed(clock.TimeAt(spot.SealedClock), "the time a dry spot is sealed")),
            SealedAreaMm2 = UnitConversion.Mm2FromSquareMetres(Needed(spot.SealedArea, "a sealed area")),
            GasVolumeCm3 = Cm3(spot.GasVolume, "a gas volume"),
        };
    }

    private static bool HasLine(FillInputs inputs, int feed) =>
        inputs.Panel.Feeds[feed] is { Bore: not null } or { Hose: not null } || inputs.Panel.Pots.Any(pot => pot.Hose is not null && pot.Name == inputs.Panel.Feeds[feed].Pot);

    private static Contract.VentForecast ToVent(string name, Domain.VentForecast vent, double density)
    {
        var answer = new Contract.VentForecast
        {
            Name = name,
            ResinOutCm3 = Cm3(vent.ResinOut, $"the resin out of {name}"),
            ResinOutG = UnitConversion.GramsFrom(vent.ResinOut, density),
            ResinOutCm3PerMin = UnitConversion.Kept(UnitConversion.Cm3FromCubicMetres(Needed(vent.ResinOutRate, $"the flow out of {name}")) * 60),
        };
        if (Kept(vent.ArrivalTime) is double arrival) answer.ArrivalTimeS = arrival;
        if (Kept(vent.FilledFractionAtArrival) is double filled) answer.FilledFractionAtArrival = filled;
        return answer;
    }

    private static double Cm3(double cubicMetres, string what) => UnitConversion.Cm3FromCubicMetres(Finite.Needed(cubicMetres, what));

    private static double Needed(double value, string what) => UnitConversion.Kept(Finite.Needed(value, what));

    private static double? Kept(double? value) => Finite.OrNone(value) is double number ? UnitConversion.Kept(number) : null;
}
