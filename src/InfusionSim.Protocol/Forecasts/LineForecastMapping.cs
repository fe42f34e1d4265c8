using InfusionSim.Protocol.Units;
using Contract = InfusionSim.Protocol.V1;
using Domain = InfusionSim.Physics.Forecasts;

namespace InfusionSim.Protocol.Forecasts;

/// <summary>Turns the pressure along a line into the contract's.</summary>
internal static class LineForecastMapping
{
    /// <summary>Maps the line at a place of a list; null where the list has none there.</summary>
    public static Contract.LineForecast? ToContract(IReadOnlyList<Domain.LineForecast?> lines, int index)
    {
        if (index >= lines.Count || lines[index] is not Domain.LineForecast line) return null;
        return new Contract.LineForecast
        {
            StartPressureRatio = Ratio(line.Start),
            EndPressureRatio = Ratio(line.End),
            EndAt = ForecastMapping.ToPoint(line.EndAt),
            Points = { line.Points.Select(point => new Contract.LinePoint { DistanceM = Ratio(point.Distance), PressureRatio = Ratio(point.Pressure) }) },
        };
    }

    private static double Ratio(double value) => UnitConversion.Kept(Finite.Needed(value, "a pressure along a line"));
}
