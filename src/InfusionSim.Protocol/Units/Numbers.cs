using System.Globalization;

namespace InfusionSim.Protocol.Units;

/// <summary>Numbers as people read them.</summary>
public static class Numbers
{
    /// <summary>A number with at most six figures: 0.05, 1013.25, 1e-10, −0.95.</summary>
    /// <param name="value">Any number.</param>
    public static string Say(double value)
    {
        if (double.IsNaN(value)) return "not a number";
        if (double.IsInfinity(value)) return value > 0 ? "infinite" : "minus infinite";
        double size = Math.Abs(value);
        return size is (>= 1e-4 and < 1e7) or 0
            ? Rounded(value, size < 1000 ? 6 : 9).ToString("0.#########", CultureInfo.InvariantCulture)
            : value.ToString("0.#####e-0", CultureInfo.InvariantCulture);
    }

    /// <summary>A count with groups of three: 1,000,000.</summary>
    /// <param name="count">Any count.</param>
    public static string Count(double count) => count.ToString("#,0", CultureInfo.InvariantCulture);

    /// <summary>A number with so many figures, without an exponent: 24, 7.5, 0.031.</summary>
    /// <param name="value">Any finite number.</param>
    /// <param name="figures">Figures to keep [-], at least 1.</param>
    public static string Figures(double value, int figures)
    {
        double rounded = Rounded(value, figures);
        if (rounded == 0) return "0";
        int before = (int)Math.Floor(Math.Log10(Math.Abs(rounded))) + 1;
        return rounded.ToString("F" + Math.Clamp(figures - before, 0, 15), CultureInfo.InvariantCulture);
    }

    /// <summary>A number rounded to so many figures.</summary>
    /// <param name="value">Any number.</param>
    /// <param name="figures">Figures to keep [-], 1 to 17.</param>
    public static double Rounded(double value, int figures) =>
        double.IsFinite(value)
            ? double.Parse(value.ToString("E" + (figures - 1), CultureInfo.InvariantCulture), CultureInfo.InvariantCulture)
            : value;
}
