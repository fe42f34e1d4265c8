namespace InfusionSim.Protocol.Units;

/// <summary>The one place where the contract's units meet SI.</summary>
/// <remarks>
/// On the way in a number is divided by a power of ten that a double holds exactly, so 1.2 mm is the double nearest to
/// 0.0012 m. On the way out it is rounded to twelve figures, far finer than any answer is known, so that 597.5 mm is
/// written 597.5 and not 597.4999999999999.
/// </remarks>
public static class UnitConversion
{
    /// <summary>Figures that an answer keeps [-].</summary>
    public const int FiguresKept = 12;

    /// <summary>Millimetres to metres [m].</summary>
    /// <param name="millimetres">Length [mm].</param>
    public static double MetresFromMm(double millimetres) => millimetres / 1000;

    /// <summary>Square millimetres to square metres [m²].</summary>
    /// <param name="squareMillimetres">Area [mm²].</param>
    public static double SquareMetresFromMm2(double squareMillimetres) => squareMillimetres / 1e6;

    /// <summary>Cubic centimetres to cubic metres [m³].</summary>
    /// <param name="cubicCentimetres">Volume [cm³].</param>
    public static double CubicMetresFromCm3(double cubicCentimetres) => cubicCentimetres / 1e6;

    /// <summary>Grams to kilograms [kg].</summary>
    /// <param name="grams">Mass [g].</param>
    public static double KilogramsFromGrams(double grams) => grams / 1000;

    /// <summary>Grams per square metre to kilograms per square metre [kg/m²].</summary>
    /// <param name="gramsPerSquareMetre">Mass over the area [g/m²].</param>
    public static double KgPerM2FromGPerM2(double gramsPerSquareMetre) => gramsPerSquareMetre / 1000;

    /// <summary>Millibar to pascal [Pa].</summary>
    /// <param name="millibar">Pressure [mbar].</param>
    public static double PascalFromMbar(double millibar) => millibar * 100;

    /// <summary>Throughput of gas in millibar litres a second to pascal cubic metres a second [Pa·m³/s].</summary>
    /// <param name="mbarLitresPerSecond">Pressure times volume each second [mbar·L/s].</param>
    public static double ThroughputFromMbarLPerS(double mbarLitresPerSecond) => mbarLitresPerSecond / 10;

    /// <summary>Throughput of gas in pascal cubic metres a second to millibar litres a second [mbar·L/s].</summary>
    /// <param name="throughput">Pressure times volume each second [Pa·m³/s].</param>
    public static double MbarLPerSFromThroughput(double throughput) => Kept(throughput * 10);

    /// <summary>Litres to cubic metres [m³].</summary>
    /// <param name="litres">Volume [L].</param>
    public static double CubicMetresFromLitres(double litres) => litres / 1000;

    /// <summary>Cubic metres an hour to cubic metres a second [m³/s].</summary>
    /// <param name="perHour">Volume an hour [m³/h].</param>
    public static double CubicMetresPerSecondFromPerHour(double perHour) => perHour / 3600;

    /// <summary>Minutes to seconds [s].</summary>
    /// <param name="minutes">Time [min].</param>
    public static double SecondsFromMin(double minutes) => minutes * 60;

    /// <summary>Degrees Celsius to kelvin [K].</summary>
    /// <param name="celsius">Temperature [°C].</param>
    public static double KelvinFromDegC(double celsius) => celsius + 273.15;

    /// <summary>Kelvin to degrees Celsius [°C].</summary>
    /// <param name="kelvin">Temperature [K].</param>
    public static double DegCFromKelvin(double kelvin) => Kept(kelvin - 273.15);

    /// <summary>Kilojoule per mole to joule per mole [J/mol].</summary>
    /// <param name="kilojoulePerMole">Activation [kJ/mol].</param>
    public static double JPerMolFromKjPerMol(double kilojoulePerMole) => kilojoulePerMole * 1000;

    /// <summary>Degrees to radians [rad].</summary>
    /// <param name="degrees">Angle [°].</param>
    public static double RadiansFromDeg(double degrees) => degrees * Math.PI / 180;

    /// <summary>Millinewton per metre to newton per metre [N/m].</summary>
    /// <param name="millinewtonPerMetre">Surface tension [mN/m].</param>
    public static double NewtonPerMetreFromMn(double millinewtonPerMetre) => millinewtonPerMetre / 1000;

    /// <summary>Metres per second to millimetres per minute [mm/min].</summary>
    /// <param name="metresPerSecond">Speed [m/s].</param>
    public static double MmPerMinFromMetresPerSecond(double metresPerSecond) => Kept(metresPerSecond * 60_000);

    /// <summary>Metres to millimetres [mm].</summary>
    /// <param name="metres">Length [m].</param>
    public static double MmFromMetres(double metres) => Kept(metres * 1000);

    /// <summary>Square metres to square millimetres [mm²].</summary>
    /// <param name="squareMetres">Area [m²].</param>
    public static double Mm2FromSquareMetres(double squareMetres) => Kept(squareMetres * 1e6);

    /// <summary>Cubic metres to cubic centimetres [cm³].</summary>
    /// <param name="cubicMetres">Volume [m³].</param>
    public static double Cm3FromCubicMetres(double cubicMetres) => Kept(cubicMetres * 1e6);

    /// <summary>Volume and density to grams [g].</summary>
    /// <param name="cubicMetres">Volume [m³].</param>
    /// <param name="density">Density [kg/m³].</param>
    public static double GramsFrom(double cubicMetres, double density) => Kept(cubicMetres * density * 1000);

    /// <summary>Kilograms to grams [g].</summary>
    /// <param name="kilograms">Mass [kg].</param>
    public static double GramsFromKilograms(double kilograms) => Kept(kilograms * 1000);

    /// <summary>Kilograms per square metre to grams per square metre [g/m²].</summary>
    /// <param name="kilogramsPerSquareMetre">Mass over the area [kg/m²].</param>
    public static double GPerM2FromKgPerM2(double kilogramsPerSquareMetre) => Kept(kilogramsPerSquareMetre * 1000);

    /// <summary>Seconds to minutes [min].</summary>
    /// <param name="seconds">Time [s].</param>
    public static double MinFromSeconds(double seconds) => Kept(seconds / 60);

    /// <summary>Pascal to millibar [mbar].</summary>
    /// <param name="pascal">Pressure [Pa].</param>
    public static double MbarFromPascal(double pascal) => Kept(pascal / 100);

    /// <summary>A number as an answer keeps it.</summary>
    /// <param name="value">Any number.</param>
    public static double Kept(double value) => Numbers.Rounded(value, FiguresKept);
}
