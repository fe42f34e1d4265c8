using InfusionSim.Physics.Clock;

namespace InfusionSim.Verification.Tests.ClosedForms;

/// <summary>
/// A strip sealed at both ends and fed through a hose at a place between them: two unequal pockets that talk to each other through the resin.
/// </summary>
/// <remarks>
/// Derived. With the feed line's pressure p, the fronts at x₁ and x₂ from it and the air at pᵢ = p₀ Lᵢ/(Lᵢ − xᵢ) (Boyle), all above p₀ and over the
/// driving pressure:
/// G (1 − p) = Σ K A (p − pᵢ)/xᵢ and d(xᵢ²/2)/dθ = K/φ (p − pᵢ). Integrated by Runge and Kutta's fourth order method in small steps.
/// </remarks>
public sealed class TwoSealedEnds
{
    private const int StepsPerMoment = 20000;
    private readonly double[] _lengths;
    private readonly double _area, _permeability, _porosity, _hose;
    private readonly Bag _bag;

    /// <summary>Makes the problem.</summary>
    /// <param name="first">Length of the strip on one side of the feed [m].</param>
    /// <param name="second">Length on the other [m].</param>
    /// <param name="area">Cross-section of the cloth [m²].</param>
    /// <param name="permeability">Permeability [m²].</param>
    /// <param name="porosity">Porosity [-].</param>
    /// <param name="hose">Conductance of the hose [m³].</param>
    /// <param name="bag">Pressure of the air at first, and of the pot.</param>
    public TwoSealedEnds(double first, double second, double area, double permeability, double porosity, double hose, Bag bag)
    {
        _lengths = [first, second];
        _area = area;
        _permeability = permeability;
        _porosity = porosity;
        _hose = hose;
        _bag = bag;
    }

    /// <summary>Where the fronts stand at rising drive clocks [m], and the absolute pressures of the two pockets [Pa].</summary>
    /// <param name="clocks">Drive clocks [-].</param>
    public IReadOnlyList<(double[] Fronts, double[] Pressures)> At(IReadOnlyList<double> clocks)
    {
        double[] halves = [1e-12, 1e-12];
        double clock = 0;
        List<(double[], double[])> moments = [];
        foreach (double until in clocks)
        {
            // Even steps of the root: the fronts run fastest at first.
            double root = Math.Sqrt(clock), step = (Math.Sqrt(until) - root) / StepsPerMoment;
            for (int k = 0; k < StepsPerMoment; k++, root += step) halves = Advanced(halves, root, step);
            clock = until;
            double[] fronts = [.. halves.Select(static half => Math.Sqrt(2 * half))];
            moments.Add((fronts, [.. fronts.Select((x, k) => _bag.Pressure * _lengths[k] / (_lengths[k] - x))]));
        }

        return moments;
    }

    private double[] Advanced(double[] y, double root, double step)
    {
        double[] a = Slope(y, root), b = Slope(Moved(y, a, step / 2), root + step / 2), c = Slope(Moved(y, b, step / 2), root + step / 2);
        double[] d = Slope(Moved(y, c, step), root + step);
        return [.. y.Select((value, k) => value + step / 6 * (a[k] + 2 * b[k] + 2 * c[k] + d[k]))];
    }

    private static double[] Moved(double[] y, double[] slope, double step) => [.. y.Select((value, k) => value + step * slope[k])];

    // Over the root of the clock: dθ = 2 √θ d√θ.
    private double[] Slope(double[] halves, double root)
    {
        double[] fronts = [.. halves.Select(static half => Math.Sqrt(2 * half))];
        double[] gas = [.. fronts.Select((x, k) => (_bag.Pressure * _lengths[k] / (_lengths[k] - x) - _bag.Pressure) / (_bag.Ambient - _bag.Pressure))];
        double[] ways = [.. fronts.Select(x => _permeability * _area / x)];
        double pressure = (_hose + ways[0] * gas[0] + ways[1] * gas[1]) / (_hose + ways[0] + ways[1]);
        return [.. gas.Select(own => 2 * root * _permeability / _porosity * (pressure - own))];
    }
}
