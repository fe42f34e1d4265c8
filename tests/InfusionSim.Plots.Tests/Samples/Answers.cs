using Google.Protobuf;
using InfusionSim.Plots.Contours;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Plots.Tests.Samples;

/// <summary>Answers made from a formula for the arrival time, so that a test knows where every line must lie.</summary>
internal static class Answers
{
    /// <summary>An answer whose arrivals follow a formula.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="cellMm">Side of a square [mm].</param>
    /// <param name="arrival">Arrival [s] at a place [mm]; NaN for a dry spot, +∞ for cloth never reached.</param>
    /// <param name="shift">How far the grid lies off the outline's corner [squares].</param>
    internal static PredictFillResponse From(InfusionPlan plan, double cellMm, Func<double, double, double> arrival, double shift = 0)
    {
        var cloth = new ClothArea(plan);
        var grid = new CellGrid
        {
            OriginXMm = cloth.LeftMm - shift * cellMm,
            OriginYMm = cloth.LowestMm - shift * cellMm,
            CellMm = cellMm,
            Columns = (int)Math.Ceiling(cloth.WidthMm / cellMm - 1e-9 + shift),
            Rows = (int)Math.Ceiling(cloth.HeightMm / cellMm - 1e-9 + shift),
        };
        var (states, times) = Sample(grid, cloth, arrival);
        var front = new FrontMap { Grid = grid, Squares = ByteString.CopyFrom(states), ArrivalTimeS = { times } };
        return new PredictFillResponse { FrontMap = front, Forecast = Forecast(plan, front, arrival) };
    }

    /// <summary>The same answer for a panel with layers whose tool side fills later.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="response">The answer for its bag side; changed in place.</param>
    /// <param name="arrival">Arrival on the tool side [s] at a place [mm].</param>
    internal static PredictFillResponse WithToolSide(InfusionPlan plan, PredictFillResponse response, Func<double, double, double> arrival)
    {
        var map = response.FrontMap;
        var (states, times) = Sample(map.Grid, new ClothArea(plan), arrival);
        map.ToolSide = new FrontSide { Squares = ByteString.CopyFrom(states), ArrivalTimeS = { times } };
        var behind = Enumerable.Range(0, times.Length).MaxBy(i => times[i] - map.ArrivalTimeS[i]);
        response.Forecast.Lag = new Lag { LargestMin = (times[behind] - map.ArrivalTimeS[behind]) / 60, At = Middle(map.Grid, behind) };
        (response.Forecast.EndTimeS, response.Forecast.FillTimeS) = (times.Max(), times.Max());
        foreach (var (mark, told) in plan.TimingMarks.Zip(response.Forecast.TimingMarks))
        {
            told.ToolSideArrivalTimeS = arrival(mark.At.XMm, mark.At.YMm);
        }

        return response;
    }

    /// <summary>Moments of an answer, evenly spaced up to its end, with a pressure that falls from the feed to the front.</summary>
    internal static FillMoment[] Moments(PredictFillResponse response, int count)
    {
        var map = response.FrontMap;
        var cloth = map.Squares.Count(state => state != (byte)SquareState.NoCloth);
        return [.. Enumerable.Range(1, count).Select(i => response.Forecast.EndTimeS * i / count).Select(time =>
        {
            bool Wet(int square) => map.Squares[square] == (byte)SquareState.Wets && map.ArrivalTimeS[square] <= time;
            var squares = Enumerable.Range(0, map.Squares.Length).ToArray();
            return new FillMoment
            {
                TimeS = time,
                FilledFraction = (double)squares.Count(Wet) / cloth,
                Grid = map.Grid,
                WetShare = ByteString.CopyFrom([.. squares.Select(square => Wet(square) ? (byte)255 : (byte)0)]),
                PressureMbarAbs = { squares.Select(square => (float)(Wet(square) ? 1013.25 - 1000 * Math.Sqrt(map.ArrivalTimeS[square] / time) : 13.25)) },
            };
        })];
    }

    private static (byte[] States, float[] Times) Sample(CellGrid grid, ClothArea cloth, Func<double, double, double> arrival)
    {
        var states = new byte[grid.Columns * grid.Rows];
        var times = new float[states.Length];
        for (var square = 0; square < states.Length; square++)
        {
            var x = grid.OriginXMm + (square % grid.Columns + 0.5) * grid.CellMm;
            var y = grid.OriginYMm + (square / grid.Columns + 0.5) * grid.CellMm;
            var time = arrival(x, y);
            states[square] = (byte)(!HasCloth(cloth, x, y, grid.CellMm) ? SquareState.NoCloth
                : double.IsNaN(time) ? SquareState.DrySpot
                : double.IsFinite(time) ? SquareState.Wets : SquareState.NeverReached);
            times[square] = states[square] == (byte)SquareState.Wets ? (float)time : 0;
        }

        return (states, times);
    }

    // A square counts as cloth as soon as a part of it has some, as the service's cut squares do.
    private static bool HasCloth(ClothArea cloth, double x, double y, double cellMm) =>
        (from i in Enumerable.Range(-2, 5) from j in Enumerable.Range(-2, 5) select new Spot(x + i * cellMm * 0.245, y + j * cellMm * 0.245)).Any(cloth.Contains);

    private static FillForecast Forecast(InfusionPlan plan, FrontMap front, Func<double, double, double> arrival)
    {
        var last = Enumerable.Range(0, front.Squares.Length).Where(i => front.Squares[i] == (byte)SquareState.Wets).MaxBy(i => front.ArrivalTimeS[i]);
        var end = (double)front.ArrivalTimeS[last];
        var dry = Enumerable.Range(0, front.Squares.Length).Where(i => front.Squares[i] == (byte)SquareState.DrySpot).ToArray();
        var never = front.Squares.Any(state => state == (byte)SquareState.NeverReached);
        var forecast = new FillForecast
        {
            Outcome = never ? Outcome.GelsFirst : dry.Length > 0 ? Outcome.TrapsAir : Outcome.Fills,
            EndTimeS = end,
            GelTimeS = never ? end : 3240,
            FilledFraction = (double)front.Squares.Count(s => s == (byte)SquareState.Wets) / front.Squares.Count(s => s != (byte)SquareState.NoCloth),
            LastToFill = Middle(front.Grid, last),
            Likely = new LikelyBand { Basis = "cloth" },
            TimingMarks = { plan.TimingMarks.Select(mark => new TimingMarkForecast { Name = mark.Name, ArrivalTimeS = arrival(mark.At.XMm, mark.At.YMm) }) },
            Vents = { plan.Vents.Select(vent => new VentForecast { Name = vent.Name, ArrivalTimeS = end * 0.9, FilledFractionAtArrival = 0.97 }) },
        };
        if (!never)
        {
            forecast.FillTimeS = end;
            forecast.SpareTimeS = forecast.GelTimeS - end;
            (forecast.Likely.FillTimeFromS, forecast.Likely.FillTimeToS) = (end / 1.5, end * 1.5);
        }

        if (dry.Length > 0)
        {
            var area = front.Grid.CellMm * front.Grid.CellMm;
            forecast.DrySpots.Add(new DrySpot
            {
                At = Drawing.At(dry.Average(i => Middle(front.Grid, i).XMm), dry.Average(i => Middle(front.Grid, i).YMm)),
                AreaMm2 = dry.Length * area,
            });
        }

        return forecast;
    }

    private static Point Middle(CellGrid grid, int square) => Drawing.At(
        grid.OriginXMm + (square % grid.Columns + 0.5) * grid.CellMm, grid.OriginYMm + (square / grid.Columns + 0.5) * grid.CellMm);
}
