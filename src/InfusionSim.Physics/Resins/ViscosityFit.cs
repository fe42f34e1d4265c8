using MathNet.Numerics;

namespace InfusionSim.Physics.Resins;

/// <summary>A table of viscosity over temperature, laid on one Arrhenius line: ln μ = ln A + E/RT.</summary>
/// <param name="Model">The line.</param>
/// <param name="Residual">Largest distance of a measured point from the line, over the line [-].</param>
/// <param name="Coldest">Lowest temperature of the table [K].</param>
/// <param name="Warmest">Highest temperature of the table [K].</param>
public sealed record ViscosityFit(ThermalViscosity Model, double Residual, double Coldest, double Warmest)
{
    /// <summary>Fits a table by least squares of ln μ over 1/T.</summary>
    /// <param name="temperatures">Temperatures [K], at least two different ones.</param>
    /// <param name="viscosities">Viscosity at each of them [Pa·s], above 0.</param>
    public static ViscosityFit Of(IReadOnlyList<double> temperatures, IReadOnlyList<double> viscosities)
    {
        ArgumentNullException.ThrowIfNull(temperatures);
        ArgumentNullException.ThrowIfNull(viscosities);
        if (temperatures.Count < 2 || temperatures.Count != viscosities.Count || temperatures.Distinct().Count() < 2)
            throw new ArgumentException("A fit needs one viscosity for each of at least two different temperatures.", nameof(temperatures));

        // Counted from the middle of 1/T, the two numbers of the line do not depend on each other and lose no digits.
        double middle = temperatures.Average(static kelvin => 1 / kelvin);
        (double intercept, double slope) = Fit.Line(
            [.. temperatures.Select(kelvin => 1 / kelvin - middle)], [.. viscosities.Select(static viscosity => Math.Log(viscosity))]);
        ThermalViscosity model = new(Math.Exp(intercept), new ArrheniusLaw(1 / middle, slope * GasConstant.Value));
        double residual = temperatures.Zip(viscosities, (kelvin, viscosity) => Math.Abs(viscosity / model.At(kelvin) - 1)).Max();
        return new(model, residual, temperatures.Min(), temperatures.Max());
    }
}
