using MathNet.Numerics;
using MathNet.Numerics.RootFinding;

namespace InfusionSim.Planning.Resins;

/// <summary>Looks for the temperature at which a resin is full soonest and still keeps the wished gel margin.</summary>
/// <remarks>
/// Warmer resin is thinner and gels sooner. Which of the two wins changes along the range and may change twice, so the range is first walked in
/// steps; the best step
/// is then narrowed down between its neighbours, to the place where the margin is just kept or to the shortest fill.
/// </remarks>
internal static class BestTemperatureSearch
{
    // A shop holds its warmth to a degree or two; a hundredth of one is finer than anybody can set.
    private const double Accuracy = 0.01;

    private const double LongestStep = 1;

    private const int FewestSteps = 12;

    /// <summary>Looks through a range.</summary>
    /// <param name="range">The range.</param>
    /// <param name="wishedMargin">Least gel margin [-].</param>
    /// <param name="fillAt">The fill at a temperature [K].</param>
    /// <param name="cancellation">Stops the work.</param>
    public static BestTemperature In(TemperatureRange range, double wishedMargin, Func<double, WarmFill> fillAt, CancellationToken cancellation = default)
    {
        // A fill that gels first is none, whatever margin is wished.
        double wished = Math.Max(1, wishedMargin);
        int steps = Math.Max(FewestSteps, (int)Math.Ceiling((range.Highest - range.Lowest) / LongestStep));
        WarmFill[] walked = [.. Generate.LinearSpaced(steps + 1, range.Lowest, range.Highest).Select(Look)];
        int[] kept = [.. Enumerable.Range(0, walked.Length).Where(k => walked[k].GelMargin >= wished)];
        if (kept.Length == 0)
        {
            int widest = Enumerable.Range(0, walked.Length).MaxBy(k => walked[k].GelMargin);
            return Answer(Between(walked[Math.Max(0, widest - 1)], walked[widest], walked[Math.Min(steps, widest + 1)], static fill => -fill.GelMargin, Look));
        }

        int best = kept.MinBy(k => walked[k].FillTime);
        WarmFill from = best > 0 ? LastKept(walked[best], walked[best - 1]) : walked[best];
        WarmFill to = best < steps ? LastKept(walked[best], walked[best + 1]) : walked[best];
        return Answer(Between(from, walked[best], to, static fill => fill.FillTime, Look));

        WarmFill Look(double temperature)
        {
            cancellation.ThrowIfCancellationRequested();
            return fillAt(temperature);
        }

        // As far from one that keeps the margin towards its neighbour as the margin holds.
        WarmFill LastKept(WarmFill good, WarmFill neighbour)
        {
            if (neighbour.GelMargin >= wished) return neighbour;
            double root = Brent.FindRoot(
                temperature => Look(temperature).GelMargin - wished,
                Math.Min(good.Temperature, neighbour.Temperature),
                Math.Max(good.Temperature, neighbour.Temperature),
                Accuracy / 10);
            WarmFill inside = Look(root + Math.Sign(good.Temperature - neighbour.Temperature) * Accuracy / 2);
            return inside.GelMargin >= wished ? inside : good;
        }

        BestTemperature Answer(WarmFill fill) => new(
            fill.GelMargin >= wished, fill.Temperature, double.IsFinite(fill.FillTime) ? fill.FillTime : null, fill.GelMargin, range.Lowest, range.Highest);
    }

    // Where a value is least between two temperatures: at one of them, or where it falls no more.
    private static WarmFill Between(WarmFill from, WarmFill middle, WarmFill to, Func<WarmFill, double> value, Func<double, WarmFill> look)
    {
        WarmFill best = new[] { middle, from, to }.MinBy(value);
        bool isInside = value(middle) < value(from) && value(middle) < value(to);
        if (!isInside || !Brent.TryFindRoot(SlopeAt, from.Temperature + Accuracy, to.Temperature - Accuracy, Accuracy / 10, 100, out double root)) return best;
        return look(root);

        double SlopeAt(double temperature) => value(look(temperature + Accuracy / 2)) - value(look(temperature - Accuracy / 2));
    }
}
