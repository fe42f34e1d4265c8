using System.Globalization;
using System.Text.RegularExpressions;
using InfusionSim.Protocol.Units;

namespace InfusionSim.Cli.Quantities;

/// <summary>Reads numbers with units as a person types them: 300mPa.s, -0.95bar(g), 30 min, 1.2 m, or a plain number in the unit of the key.</summary>
public static partial class QuantityReader
{
    // The key whose gauge reading is shown beside its absolute value.
    private const string BagPressure = "pressureMbarAbs";

    /// <summary>Reads a number for a key.</summary>
    /// <param name="key">Key as a plan file writes it; its ending names the unit.</param>
    /// <param name="typed">What was typed.</param>
    /// <param name="ambientMbarAbs">Pressure of the air in the shop that a gauge reading counts from [mbar].</param>
    /// <exception cref="FormatException">When it cannot be understood; the message says what can.</exception>
    public static Quantity Read(string key, string typed, double ambientMbarAbs)
    {
        KeyUnit wanted = KeyUnit.Of(key);
        Match match = NumberAndUnit().Match(typed.Trim());
        if (!match.Success || !double.TryParse(match.Groups["number"].Value.Replace('−', '-'), NumberStyles.Float, CultureInfo.InvariantCulture, out double number))
            throw new FormatException($"'{typed}' does not begin with a number. Write for example {Example(wanted)}.{(typed.Contains(',', StringComparison.Ordinal) ? " The decimal sign is a point." : "")}");

        if (!double.IsFinite(number)) throw new FormatException($"'{typed}' is larger than any number here.");
        string unit = match.Groups["unit"].Value.Trim();
        bool isGauge = match.Groups["gauge"].Success;
        if (unit.Length == 0 && !isGauge) return Understand(key, wanted, number, ambientMbarAbs);

        double size = unit.Length == 0 ? wanted.Scale : SizeOf(unit, wanted, key);
        double value = number * size / wanted.Scale;
        if (wanted.Dimension != Dimension.Pressure)
            return isGauge ? throw new FormatException($"(g) marks a gauge pressure; {key} is none.") : Understand(key, wanted, value, ambientMbarAbs);
        if (isGauge) return UnderstandGauge(wanted, value, ambientMbarAbs);
        if (value < 0)
            throw new FormatException($"'{typed}' is below zero, so it cannot be an absolute pressure. If your gauge shows it, write {match.Groups["number"].Value}{unit}(g).");
        return Understand(key, wanted, value, ambientMbarAbs);
    }

    private static double SizeOf(string unit, KeyUnit wanted, string key)
    {
        if (TypedUnits.Find(wanted.Dimension, unit) is double size) return size;
        string what = TypedUnits.DimensionOf(unit) is Dimension other ? $"'{unit}' measures {InWords(other)}, and {key} is {InWords(wanted.Dimension)}." : $"'{unit}' is no unit known here.";
        throw new FormatException($"{what} Units for it: {TypedUnits.Offer(wanted.Dimension)}.");
    }

    private static Quantity Understand(string key, KeyUnit unit, double value, double ambientMbarAbs)
    {
        double kept = UnitConversion.Kept(value);
        string gauge = key == BagPressure && kept >= 0 && kept <= ambientMbarAbs ? $" (a gauge shows {Numbers.Say(kept - ambientMbarAbs)} mbar)" : "";
        return new Quantity(kept, $"{Numbers.Say(kept)} {unit.Symbol}".Trim() + gauge);
    }

    private static Quantity UnderstandGauge(KeyUnit unit, double gauge, double ambientMbarAbs)
    {
        double kept = UnitConversion.Kept(ambientMbarAbs + gauge);
        string sum = $"gauge {Numbers.Say(gauge)} mbar with {Numbers.Say(ambientMbarAbs)} mbar of air";
        return kept < 0
            ? throw new FormatException($"{sum} would be {Numbers.Say(kept)} mbar absolute, deeper than a perfect vacuum: there no gauge can show below {Numbers.Say(-ambientMbarAbs)} mbar. "
                + "Check the gauge, or give the air of your shop: bag.ambientMbarAbs from a barometer, or shop.altitudeM.")
            : new Quantity(kept, $"{Numbers.Say(kept)} {unit.Symbol} ({sum})");
    }

    private static string Example(KeyUnit unit) => unit.Dimension switch
    {
        Dimension.Length => "600, 600mm or 0.6m",
        Dimension.Area => "1e-10 or 100mm2",
        Dimension.Volume => "200, 200ml or 0.2l",
        Dimension.Pressure => "20, 20mbar or -0.95bar(g)",
        Dimension.PressureDifference => "8 or 8mbar",
        Dimension.Leak => "0.27 or 0.27mbar.l/s",
        Dimension.PumpSpeed => "4, 4m3/h or 67l/min",
        Dimension.Viscosity => "0.3 or 300mPa.s",
        Dimension.Time => "30, 30min or 0.5h",
        Dimension.Density => "1100 or 1.1g/cm3",
        Dimension.Mass => "500, 500g or 0.5kg",
        Dimension.ArealWeight => "600 or 600g/m2",
        Dimension.Temperature => "20 or 20degC",
        Dimension.Cooling => "0.6 or 0.6W/K",
        Dimension.MolarEnergy => "50 or 50kJ/mol",
        Dimension.SpecificHeat => "450000 or 450kJ/kg",
        Dimension.HeatCapacity => "1900 or 1.9kJ/kgK",
        Dimension.Rate => "1e5 or 1e5 1/s",
        Dimension.SurfaceTension => "35 or 35mN/m",
        Dimension.Angle => "90 or 90deg",
        _ => "0.5",
    };

    private static string InWords(Dimension dimension) => dimension switch
    {
        Dimension.Ratio => "a plain number",
        Dimension.Area => "an area or a permeability",
        Dimension.ArealWeight => "a weight over an area",
        Dimension.Cooling => "a cooling in W/K",
        Dimension.MolarEnergy => "an activation in kJ/mol",
        Dimension.SpecificHeat => "a heat in J/kg",
        Dimension.HeatCapacity => "a heat capacity in J/(kg·K)",
        Dimension.Rate => "a rate in 1/s",
        Dimension.SurfaceTension => "a surface tension",
        Dimension.Angle => "an angle",
        Dimension.PressureDifference => "a difference of pressures",
        Dimension.PumpSpeed => "a volume in a time",
        _ => "a " + dimension.ToString().ToLowerInvariant(),
    };

    [GeneratedRegex(@"^(?<number>[-−+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?)\s*(?<unit>[^\d()\s,][^()]*?)?\s*(?:(?<gauge>\((?:g|gauge)\))|\((?:a|abs|absolute)\))?$")]
    private static partial Regex NumberAndUnit();
}
