using System.Collections.Concurrent;
using InfusionSim.Protocol.V1;
using static InfusionSim.Plots.Tests.Samples.Drawing;

namespace InfusionSim.Plots.Tests.Samples;

/// <summary>Panels whose arrivals have a closed form.</summary>
internal static class SamplePanels
{
    // Made once; every test gets its own copy to change.
    private static readonly ConcurrentDictionary<string, (InfusionPlan Plan, PredictFillResponse Response)> Made = new();

    /// <summary>Every panel.</summary>
    internal static IReadOnlyList<(InfusionPlan Plan, PredictFillResponse Response)> All() => [Strip(), Disc(), HoleAndDrySpot(), Turned(), LayUp()];

    /// <summary>A strip fed through its left edge: t = T (x/L)², T = 1800 s, L = 600 mm.</summary>
    internal static (InfusionPlan Plan, PredictFillResponse Response) Strip() => Copy(nameof(Strip), MakeStrip);

    private static (InfusionPlan Plan, PredictFillResponse Response) MakeStrip()
    {
        var plan = Plan("Straight strip", Box(0, 0, 600, 400));
        plan.Feeds.Add(new Feed { Name = "F1", Path = Path((0, 0), (0, 400)) });
        plan.Vents.Add(new Vent { Name = "V1", Path = Path((600, 0), (600, 400)) });
        plan.TimingMarks.Add(new TimingMark { Name = "M1", At = At(300, 200) });
        return (plan, Answers.From(plan, 5, (x, _) => 1800 * Math.Pow(x / 600, 2)));
    }

    /// <summary>A disc of 720 corners fed in the middle: t grows with the square of the distance, 1200 s at 300 mm.</summary>
    internal static (InfusionPlan Plan, PredictFillResponse Response) Disc() => Copy(nameof(Disc), MakeDisc);

    private static (InfusionPlan Plan, PredictFillResponse Response) MakeDisc()
    {
        var plan = Plan("Hatch cover, fed in the middle", Drawing.Disc(300, 300, 300, 720));
        plan.Feeds.Add(new Feed { Name = "F1", Path = Path((300, 300)), ContactWidthMm = 20 });
        plan.Vents.Add(new Vent { Name = "V1", Path = Path((20, 300)), Kind = VentKind.Membrane });
        return (plan, Answers.From(plan, 6, (x, y) => 1200 * (Math.Pow(x - 300, 2) + Math.Pow(y - 300, 2)) / 9e4, 0.37));
    }

    /// <summary>A plate with a hole and a dry spot behind it.</summary>
    internal static (InfusionPlan Plan, PredictFillResponse Response) HoleAndDrySpot() => Copy(nameof(HoleAndDrySpot), MakeHoleAndDrySpot);

    private static (InfusionPlan Plan, PredictFillResponse Response) MakeHoleAndDrySpot()
    {
        var plan = Plan("Sled deck, first line plan", Box(0, 0, 1200, 500), Drawing.Disc(450, 250, 90, 90));
        plan.Preform.Zones.Add(new Zone { Name = "runner", Area = Box(0, 200, 1200, 300) });
        plan.Feeds.Add(new Feed { Name = "F1", Path = Path((0, 0), (0, 500)) });
        plan.Vents.Add(new Vent { Name = "V1", Path = Path((1190, 490)) });
        plan.Vents.Add(new Vent { Name = "V2", Path = Path((1190, 10)) });
        plan.TimingMarks.Add(new TimingMark { Name = "M1", At = At(700, 420) });
        plan.TimingMarks.Add(new TimingMark { Name = "M2", At = At(250, 90) });
        return (plan, Answers.From(plan, 5, (x, y) =>
        {
            var dryness = Math.Pow((x - 1010) / 60, 2) + Math.Pow((y - 250) / 38, 2);
            var lag = 160 * Math.Exp(-Math.Pow((y - 250) / 90, 2)) / (1 + Math.Exp(-(x - 450) / 60));
            return dryness < 1 ? double.NaN : 1500 * Math.Pow((x + lag) / 1200, 2);
        }));
    }

    /// <summary>A plate turned by 17°, its edge squares cut, that gels before its far end is wet.</summary>
    internal static (InfusionPlan Plan, PredictFillResponse Response) Turned() => Copy(nameof(Turned), MakeTurned);

    private static (InfusionPlan Plan, PredictFillResponse Response) MakeTurned()
    {
        var (c, s) = (Math.Cos(17 * Math.PI / 180), Math.Sin(17 * Math.PI / 180));
        (double X, double Y) Turn(double x, double y) => (c * x - s * y, s * x + c * y);
        var plan = Plan("Canoe seat, laid at 17°", Ring(Turn(0, 0), Turn(700, 0), Turn(700, 350), Turn(0, 350)), Ring(Turn(300, 130), Turn(420, 130), Turn(420, 220), Turn(300, 220)));
        plan.Feeds.Add(new Feed { Name = "F1", Path = Path(Turn(0, 0), Turn(0, 350)) });
        plan.Vents.Add(new Vent { Name = "V1", Path = Path(Turn(700, 0), Turn(700, 350)) });
        return (plan, Answers.From(plan, 5, (x, y) =>
        {
            var along = c * x + s * y;
            return along > 560 ? double.PositiveInfinity : 3240 * Math.Pow(Math.Max(0, along) / 560, 2);
        }));
    }

    /// <summary>
    /// A sloped deck with all that can lie on it, 600 × 400 mm: t = 920 s (x/600)² on the bag side, the tool side 0.4 s/mm later up to x = 450 mm,
    /// less beyond.
    /// </summary>
    internal static (InfusionPlan Plan, PredictFillResponse Response) LayUp() => Copy(nameof(LayUp), MakeLayUp);

    private static (InfusionPlan Plan, PredictFillResponse Response) MakeLayUp()
    {
        var plan = Plan("Sled deck, with all that lies on it", Box(0, 0, 600, 400));
        plan.Preform.Zones[0].Permeability = new Permeability { K1M2 = 2e-10, K2M2 = 1e-10, AngleDeg = 30 };
        plan.FlowMeshes.Add(new FlowMesh { Area = Box(0, 0, 450, 400), ThicknessMm = 1, Porosity = 0.8, Permeability = new Permeability { K1M2 = 3e-9 } });
        plan.Cores.Add(new Core { Area = Box(150, 100, 300, 300), ThicknessMm = 10, Holes = new Holes { DiameterMm = 2, PitchMm = 20 } });
        plan.Gaps.Add(new Gap { Path = Path((0, 400), (600, 400)), WidthMm = 1 });
        plan.Slope = new Slope { UphillDeg = 40, AngleDeg = 12 };
        plan.Feeds.Add(new Feed { Name = "F1", Path = Path((0, 0), (0, 400)), BoreMm = 8, Hose = new Hose { BoreMm = 8, LengthM = 2, JoinsAt = At(0, 100) } });
        plan.Vents.Add(new Vent { Name = "V1", Path = Path((600, 0), (600, 400)), BoreMm = 8 });
        plan.TimingMarks.Add(new TimingMark { Name = "M1", At = At(400, 60) });
        var response = Answers.From(plan, 5, (x, _) => 920 * Math.Pow(x / 600, 2));
        Answers.WithToolSide(plan, response, (x, _) => 920 * Math.Pow(x / 600, 2) + 0.4 * Math.Min(x, 450) - 0.9 * Math.Max(0, x - 450));
        response.Forecast.Feeds.Add(new FeedForecast { Name = "F1", Line = Line(400, 17, (way, _) => 0.96 - 0.001 * Math.Abs(way - 100)) });
        response.Forecast.Vents[0].Line = Line(400, 17, (way, length) => 0.04 * way / length);
        return (plan, response);
    }

    private static LineForecast Line(double lengthMm, int count, Func<double, double, double> pressure)
    {
        var ways = Enumerable.Range(0, count).Select(i => lengthMm * i / (count - 1));
        return new LineForecast { Points = { ways.Select(way => new LinePoint { DistanceM = way / 1000, PressureRatio = pressure(way, lengthMm) }) } };
    }

    private static (InfusionPlan Plan, PredictFillResponse Response) Copy(string name, Func<(InfusionPlan Plan, PredictFillResponse Response)> make)
    {
        var (plan, response) = Made.GetOrAdd(name, _ => make());
        return (plan.Clone(), response.Clone());
    }
}
