using System.Globalization;

namespace InfusionSim.Verification.Tests.Accuracy;

/// <summary>Errors on a row of ever finer grids, and the order at which they shrink.</summary>
public static class Convergence
{
    /// <summary>Order of convergence by a straight line through the logarithms of all errors [-].</summary>
    /// <param name="cellSizes">Cell sizes [m].</param>
    /// <param name="errors">Relative errors [-], none 0.</param>
    public static double Order(IReadOnlyList<double> cellSizes, IReadOnlyList<double> errors)
    {
        double[] x = [.. cellSizes.Select(size => Math.Log(size))], y = [.. errors.Select(error => Math.Log(Math.Abs(error)))];
        double meanX = x.Average(), meanY = y.Average(), top = 0, bottom = 0;
        for (int k = 0; k < x.Length; k++)
        {
            top += (x[k] - meanX) * (y[k] - meanY);
            bottom += (x[k] - meanX) * (x[k] - meanX);
        }

        return top / bottom;
    }

    /// <summary>Prints errors, the rate from each grid to the next, and the order over all, and returns the order [-].</summary>
    /// <param name="problem">What was computed.</param>
    /// <param name="cellSizes">Cell sizes [m].</param>
    /// <param name="errors">Relative errors [-].</param>
    public static double PrintOrder(string problem, IReadOnlyList<double> cellSizes, IReadOnlyList<double> errors)
    {
        ITestOutputHelper? output = TestContext.Current.TestOutputHelper;
        for (int k = 0; k < errors.Count; k++)
        {
            double rate = k == 0 ? double.NaN : Math.Log(Math.Abs(errors[k - 1] / errors[k])) / Math.Log(cellSizes[k - 1] / cellSizes[k]);
            output?.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{problem}: cell {cellSizes[k] * 1e3:G4} mm, relative error {errors[k]:0.000e+0}, rate {rate:0.00}"));
        }

        double order = Order(cellSizes, errors);
        output?.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{problem}: order over all grids {order:0.00}"));
        return order;
    }
}
