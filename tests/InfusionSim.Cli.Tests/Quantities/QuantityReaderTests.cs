using InfusionSim.Cli.Quantities;

namespace InfusionSim.Cli.Tests.Quantities;

public sealed class QuantityReaderTests
{
    private const double Ambient = 1013.25;

    [Theory]
    [InlineData("viscosityPaS", "0.3", 0.3, "0.3 Pa·s")]
    [InlineData("viscosityPaS", "300mPa.s", 0.3, "0.3 Pa·s")]
    [InlineData("viscosityPaS", "300 mPa·s", 0.3, "0.3 Pa·s")]
    [InlineData("viscosityPaS", "300mPa s", 0.3, "0.3 Pa·s")]
    [InlineData("viscosityPaS", "250 cP", 0.25, "0.25 Pa·s")]
    [InlineData("gelTimeMin", "30 min", 30, "30 min")]
    [InlineData("gelTimeMin", "1.5h", 90, "90 min")]
    [InlineData("gelTimeMin", "45", 45, "45 min")]
    [InlineData("gelTimeMin", "90s", 1.5, "1.5 min")]
    [InlineData("thicknessMm", "0.3cm", 3, "3 mm")]
    [InlineData("xMm", "1.2 m", 1200, "1200 mm")]
    [InlineData("xMm", "-5", -5, "-5 mm")]
    [InlineData("cellMm", "2in", 50.8, "50.8 mm")]
    [InlineData("k1M2", "1e-10", 1e-10, "1e-10 m²")]
    [InlineData("k1M2", "100 µm²", 1e-10, "1e-10 m²")]
    [InlineData("k1M2", "1e-4mm2", 1e-10, "1e-10 m²")]
    [InlineData("largestDrySpotMm2", "2 cm²", 200, "200 mm²")]
    [InlineData("mostResinOutCm3", "0.2 l", 200, "200 cm³")]
    [InlineData("mostResinOutCm3", "200ml", 200, "200 cm³")]
    [InlineData("densityKgPerM3", "1.1 g/cm3", 1100, "1100 kg/m³")]
    [InlineData("angleDeg", "90°", 90, "90 °")]
    [InlineData("largestBatchG", "2.5kg", 2500, "2500 g")]
    [InlineData("arealWeightGPerM2", "0.6 kg/m²", 600, "600 g/m²")]
    [InlineData("arealWeightGPerM2", "600gsm", 600, "600 g/m²")]
    [InlineData("warmestPotDegC", "45 °C", 45, "45 °C")]
    [InlineData("potCoolingWPerK", "0.6W/K", 0.6, "0.6 W/K")]
    [InlineData("porosity", "0.5", 0.5, "0.5")]
    [InlineData("porosity", "50%", 0.5, "0.5")]
    [InlineData("pressureMbarAbs", "20", 20, "20 mbar absolute (a gauge shows -993.25 mbar)")]
    [InlineData("pressureMbarAbs", "2 kPa", 20, "20 mbar absolute (a gauge shows -993.25 mbar)")]
    [InlineData("pressureMbarAbs", "0.02 bar (abs)", 20, "20 mbar absolute (a gauge shows -993.25 mbar)")]
    [InlineData("ambientMbarAbs", "0.98bar", 980, "980 mbar absolute")]
    [InlineData("riseMbar", "800 Pa", 8, "8 mbar")]
    [InlineData("minutes", "600s", 10, "10 min")]
    [InlineData("volumeL", "20000cm3", 20, "20 L")]
    [InlineData("leakMbarLPerS", "0.27 mbar·l/s", 0.27, "0.27 mbar·L/s")]
    [InlineData("leakMbarLPerS", "100sccm", 1.68875, "1.68875 mbar·L/s")]
    [InlineData("speedM3PerH", "50 l/min", 3, "3 m³/h")]
    [InlineData("altitudeM", "0.65 km", 650, "650 m")]
    [InlineData("altitudeM", "2000", 2000, "2000 m")]
    [InlineData("temperatureDegC", "23°C", 23, "23 °C")]
    [InlineData("massG", "1.2 kg", 1200, "1200 g")]
    public void Read_NumberWithUnit_IsTurnedIntoTheUnitOfTheKey(string key, string typed, double value, string understood)
    {
        Quantity quantity = QuantityReader.Read(key, typed, Ambient);

        quantity.Value.ShouldBe(value, 1e-12 * Math.Abs(value));
        quantity.Understood.ShouldBe(understood);
    }

    [Theory]
    [InlineData("-0.95bar(g)", 63.25)]
    [InlineData("-950 mbar (g)", 63.25)]
    [InlineData("-950(g)", 63.25)]
    [InlineData("−0.95 bar(g)", 63.25)]
    [InlineData("-95kPa(gauge)", 63.25)]
    public void Read_GaugePressure_CountsFromTheAirInTheShop(string typed, double absolute)
    {
        Quantity quantity = QuantityReader.Read("pressureMbarAbs", typed, Ambient);

        quantity.Value.ShouldBe(absolute, 1e-9);
        quantity.Understood.ShouldBe("63.25 mbar absolute (gauge -950 mbar with 1013.25 mbar of air)");
    }

    [Fact]
    public void Read_GaugeDeeperThanTheAirAllows_SaysWhereTheAirCanBeGiven()
    {
        // Source: at 1000 m the air has 898.746 mbar (ISO 2533), so −950 mbar cannot be.
        string says = Should.Throw<FormatException>(() => QuantityReader.Read("pressureMbarAbs", "-0.95bar(g)", 898.746)).Message;
        says.ShouldContain("gauge -950 mbar with 898.746 mbar of air would be -51.254 mbar absolute");
        says.ShouldContain("no gauge can show below -898.746 mbar");
        says.ShouldContain("shop.altitudeM");
    }

    [Fact]
    public void Read_GaugePressureHighUp_CountsFromThinnerAir() =>
        QuantityReader.Read("pressureMbarAbs", "-0.75bar(g)", 795).Value.ShouldBe(45, 1e-9);

    [Theory]
    [InlineData("pressureMbarAbs", "-0.95bar", "-0.95bar(g)")]
    [InlineData("pressureMbarAbs", "-1.2bar(g)", "deeper than a perfect vacuum: there no gauge can show below -1013.25 mbar")]
    [InlineData("riseMbar", "8mbar(g)", "gauge pressure")]
    [InlineData("viscosityPaS", "300 mbar", "'mbar' measures a pressure, and viscosityPaS is a viscosity")]
    [InlineData("viscosityPaS", "300 furlong", "'furlong' is no unit known here")]
    [InlineData("viscosityPaS", "thick", "does not begin with a number")]
    [InlineData("viscosityPaS", "0,3", "The decimal sign is a point.")]
    [InlineData("viscosityPaS", "", "does not begin with a number")]
    [InlineData("viscosityPaS", "NaN", "does not begin with a number")]
    [InlineData("viscosityPaS", "1e999", "is larger than any number here")]
    [InlineData("thicknessMm", "3(g)", "gauge pressure")]
    public void Read_WhatCannotBeMeant_SaysWhatCan(string key, string typed, string says) =>
        Should.Throw<FormatException>(() => QuantityReader.Read(key, typed, Ambient)).Message.ShouldContain(says);

    [Fact]
    public void Read_AnyText_IsUnderstoodOrRefusedInWords() =>
        CsCheck.Check.Sample(CsCheck.Gen.String[0, 30], text =>
        {
            try
            {
                return double.IsFinite(QuantityReader.Read("pressureMbarAbs", text, Ambient).Value);
            }
            catch (FormatException exception)
            {
                return exception.Message.Length > 10;
            }
        }, iter: 20_000);
}
