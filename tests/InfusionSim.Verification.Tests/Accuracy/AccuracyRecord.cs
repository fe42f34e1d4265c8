using System.Globalization;

namespace InfusionSim.Verification.Tests.Accuracy;

/// <summary>One line of the accuracy table: what was expected, what came out, on which grid.</summary>
/// <param name="Problem">What was computed.</param>
/// <param name="Source">Where the expected value comes from.</param>
/// <param name="Expected">Expected value, in the problem's unit.</param>
/// <param name="Observed">What came out, in the same unit.</param>
/// <param name="Unit">The unit.</param>
/// <param name="Grid">Cells it was computed on.</param>
/// <param name="InTable">Whether it is worth a row of its own in the printed table.</param>
public sealed record AccuracyRecord(string Problem, string Source, double Expected, double Observed, string Unit, string Grid, bool InTable = true)
{
    private static readonly Lock Writing = new();

    /// <summary>Name of the environment variable that names the file to write to.</summary>
    public const string FileVariable = "INFUSIONSIM_ACCURACY_FILE";

    /// <summary>Difference over the expected value [-].</summary>
    public double RelativeError => (Observed - Expected) / Expected;

    /// <summary>Prints the line, writes it to the file where one is named, and judges it.</summary>
    /// <param name="tolerance">Largest relative error [-].</param>
    public void ShouldHold(double tolerance)
    {
        Print();
        Math.Abs(RelativeError).ShouldBeLessThanOrEqualTo(tolerance, ToString());
    }

    /// <summary>Prints the line and writes it to the file where one is named.</summary>
    public void Print()
    {
        TestContext.Current.TestOutputHelper?.WriteLine(ToString());
        string? file = Environment.GetEnvironmentVariable(FileVariable);
        if (!InTable || string.IsNullOrEmpty(file)) return;
        string line = string.Create(
            CultureInfo.InvariantCulture, $"{Problem}\t{Source}\t{Expected:G7} {Unit}\t{Observed:G7} {Unit}\t{RelativeError:0.0e+0}\t{Grid}\n");
        lock (Writing) File.AppendAllText(file, line);
    }

    /// <summary>The line in words.</summary>
    public override string ToString() =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{Problem}: expected {Expected:G9} {Unit}, observed {Observed:G9} {Unit}, relative error {RelativeError:0.00e+0}, {Grid} ({Source})");
}
