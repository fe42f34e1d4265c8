using System.Globalization;
using InfusionSim.Protocol.Units;

namespace InfusionSim.Protocol.Words;

/// <summary>Times, weights, areas and shares as a laminator reads them in a glance.</summary>
public static class Amounts
{
    /// <summary>A time: 45 s, 7.5 min, 30 min, 2 h 10 min.</summary>
    /// <param name="seconds">Time [s], at least 0.</param>
    public static string Time(double seconds)
    {
        if (seconds < 59.5) return $"{Math.Round(seconds):0} s";
        double minutes = seconds / 60;
        if (minutes < 9.95) return $"{minutes.ToString("0.#", CultureInfo.InvariantCulture)} min";
        double whole = Math.Round(minutes);
        if (whole < 120) return $"{whole:0} min";
        double hours = Math.Floor(whole / 60), rest = whole - 60 * hours;
        return rest == 0 ? $"{hours:0} h" : $"{hours:0} h {rest:0} min";
    }

    /// <summary>Two times with their unit said once where it is the same: 20 to 45 min.</summary>
    /// <param name="from">First time [s].</param>
    /// <param name="to">Second time [s].</param>
    public static string TimeRange(double from, double to)
    {
        string first = Time(from), second = Time(to);
        foreach (string unit in (string[])[" min", " s"])
            if (first.EndsWith(unit, StringComparison.Ordinal) && second.EndsWith(unit, StringComparison.Ordinal) && !(first + second).Contains('h'))
                return $"{first[..^unit.Length]} to {second}";
        return $"{first} to {second}";
    }

    /// <summary>A small amount with one place below 100 and none above; 0 for next to nothing.</summary>
    /// <param name="value">Any amount, at least 0.</param>
    public static string Small(double value)
    {
        if (value < 0.05) return "0";
        return value < 99.95 ? value.ToString("0.0", CultureInfo.InvariantCulture) : Numbers.Count(Math.Round(value));
    }

    /// <summary>A weight: 0 g, 6.6 g, 396 g, 12.4 kg.</summary>
    /// <param name="grams">Weight [g], at least 0.</param>
    public static string Weight(double grams) =>
        grams < 9999.5 ? $"{(grams is >= 9.95 ? Math.Round(grams).ToString("0", CultureInfo.InvariantCulture) : Small(grams))} g" : $"{Numbers.Figures(grams / 1000, 3)} kg";

    /// <summary>A weight as a scale in the shop shows it: 6.6 g, 396 g, 5,899 g.</summary>
    /// <param name="grams">Weight [g], at least 0.</param>
    public static string OnScale(double grams) => $"{(grams < 99.95 ? Small(grams) : Numbers.Count(Math.Round(grams)))} g";

    /// <summary>A volume: 6.0 cm³, 250 cm³, 12.4 l.</summary>
    /// <param name="cm3">Volume [cm³], at least 0.</param>
    public static string Volume(double cm3) => cm3 < 9999.5 ? $"{Small(cm3)} cm³" : $"{Numbers.Figures(cm3 / 1000, 3)} l";

    /// <summary>A length: 46 mm, 850 mm, 1.2 m.</summary>
    /// <param name="millimetres">Length [mm], at least 0.</param>
    public static string Length(double millimetres) =>
        millimetres < 999.5 ? $"{Numbers.Say(Numbers.Rounded(millimetres, millimetres < 99.5 ? 2 : 3))} mm" : $"{Numbers.Say(Numbers.Rounded(millimetres / 1000, 2))} m";

    /// <summary>A viscosity: 200 mPa·s, 1.2 Pa·s.</summary>
    /// <param name="pascalSeconds">Viscosity [Pa·s], above 0.</param>
    public static string Viscosity(double pascalSeconds) =>
        pascalSeconds < 0.995 ? $"{Numbers.Figures(1000 * pascalSeconds, 2)} mPa·s" : $"{Numbers.Figures(pascalSeconds, 2)} Pa·s";

    /// <summary>A temperature: 20 °C, 22.5 °C.</summary>
    /// <param name="celsius">Temperature [°C].</param>
    public static string Temperature(double celsius) => $"{celsius.ToString("0.#", CultureInfo.InvariantCulture)} °C";

    /// <summary>An area: 80 mm², 1 cm², 12 cm², 0.3 m².</summary>
    /// <param name="mm2">Area [mm²], at least 0.</param>
    public static string Area(double mm2)
    {
        if (mm2 < 99.5) return $"{Numbers.Say(Numbers.Rounded(mm2, 2))} mm²";
        if (mm2 < 99_500) return $"{Numbers.Say(Numbers.Rounded(mm2 / 100, mm2 < 9950 ? 2 : 3))} cm²";
        return $"{Numbers.Say(Numbers.Rounded(mm2 / 1e6, 2))} m²";
    }

    /// <summary>A share in per cent, for reading only: 100 % is said of a full panel alone.</summary>
    /// <param name="fraction">Share [-], 0 to 1.</param>
    public static string Percent(double fraction)
    {
        double percent = 100 * fraction;
        if (percent >= 99.95) return "100 %";
        return percent is > 95 or < 1 ? $"{percent.ToString("0.#", CultureInfo.InvariantCulture)} %" : $"{Math.Round(percent):0} %";
    }
}
