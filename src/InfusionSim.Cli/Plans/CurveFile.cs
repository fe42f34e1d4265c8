using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using InfusionSim.Cli.Commands;
using InfusionSim.Cli.Quantities;
using InfusionSim.Protocol.Units;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Cli.Plans;

/// <summary>Reads a viscosity that was measured over time: two columns, minutes from mixing and viscosity, the viscosity's unit in the heading.</summary>
public static partial class CurveFile
{
    private const int MostFaults = 10;

    private const string Example = "Write for example\n  minutes, viscosity [mPa.s]\n  0, 310\n  20, 420";

    /// <summary>Whether a file is such a table.</summary>
    /// <param name="path">The file.</param>
    public static bool IsOne(string path) => string.Equals(System.IO.Path.GetExtension(path), ".csv", StringComparison.OrdinalIgnoreCase);

    /// <summary>Reads a curve.</summary>
    /// <param name="path">The file.</param>
    /// <exception cref="CommandException">When there is no such file, or it cannot be understood; every line at fault is named.</exception>
    public static ViscosityCurve Read(string path) => Parse(Encoding.UTF8.GetString(PlanFile.ReadBytes(path, Example).Span), path);

    private static ViscosityCurve Parse(string text, string path)
    {
        (string Line, int Number)[] lines = [.. text.TrimStart('\uFEFF').ReplaceLineEndings("\n").Split('\n').Select(static (line, k) => (line.Trim(), k + 1)).Where(static one => one.Item1.Length > 0 && !one.Item1.StartsWith('#'))];
        if (lines.Length == 0) throw new CommandException(ExitCodes.BadInput, $"{path} is empty. {Example}");
        char separator = lines[0].Line.Contains('\t') ? '\t' : lines[0].Line.Contains(';') ? ';' : ',';
        string[] heading = lines[0].Line.Split(separator);
        double size = heading.Length == 2 && UnitOf(heading[1]) is double known ? known
            : throw new CommandException(ExitCodes.BadInput, $"{path}, line {lines[0].Number}: \"{lines[0].Line}\" must be a heading of two columns, minutes from mixing and viscosity with its unit ({TypedUnits.Offer(Dimension.Viscosity)}). {Example}");
        if (double.TryParse(heading[0], NumberStyles.Float, CultureInfo.InvariantCulture, out _))
            throw new CommandException(ExitCodes.BadInput, $"{path}, line {lines[0].Number}: the heading is missing. {Example}");
        ViscosityCurve curve = new();
        List<string> faults = [];
        foreach ((string line, int number) in lines.Skip(1))
        {
            string[] cells = [.. line.Split(separator).Select(cell => separator == ',' ? cell : cell.Replace(',', '.'))];
            if (cells.Length == 2 && Number(cells[0]) is double minutes && Number(cells[1]) is double viscosity)
                curve.Points.Add(new CurvePoint { AtMin = minutes, ViscosityPaS = UnitConversion.Kept(viscosity * size) });
            else if (faults.Count < MostFaults)
                faults.Add($"{path}, line {number}: \"{line}\" is not two numbers, minutes and viscosity.");
        }

        return faults.Count == 0 ? curve : throw new CommandException(ExitCodes.BadInput, faults);
    }

    private static double? Number(string cell) =>
        double.TryParse(cell.Trim(), NumberStyles.Float, CultureInfo.InvariantCulture, out double number) && double.IsFinite(number) ? number : null;

    // "viscosity [mPa·s]", "viscosity (Pa.s)", "viscosity mPas": the unit stands in brackets or last.
    private static double? UnitOf(string heading)
    {
        Match bracketed = InBrackets().Match(heading);
        string unit = bracketed.Success ? bracketed.Groups["unit"].Value : heading.Trim().Split(' ')[^1];
        return TypedUnits.Find(Dimension.Viscosity, unit);
    }

    [GeneratedRegex(@"[\[(](?<unit>[^\])]+)[\])]")]
    private static partial Regex InBrackets();
}
