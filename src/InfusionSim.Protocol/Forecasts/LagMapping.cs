using InfusionSim.Numerics.Geometry;
using InfusionSim.Protocol.Units;
using Contract = InfusionSim.Protocol.V1;
using Domain = InfusionSim.Physics.Forecasts;

namespace InfusionSim.Protocol.Forecasts;

/// <summary>Turns the lag of the tool side into the contract's.</summary>
internal static class LagMapping
{
    /// <summary>Maps the lag.</summary>
    public static Contract.Lag ToContract(Domain.LagForecast lag)
    {
        var answer = new Contract.Lag { LargestMin = UnitConversion.Kept(Finite.Needed(lag.LargestLag, "the lag") / 60) };
        if (lag.At is Point2 at) answer.At = ForecastMapping.ToPoint(at);
        if (Finite.OrNone(lag.Length) is double length) answer.LengthMm = UnitConversion.MmFromMetres(length);
        if (Finite.OrNone(lag.StopBeforeVent) is double stop) answer.StopMeshBeforeVentMm = UnitConversion.MmFromMetres(stop);
        if (Finite.OrNone(lag.MeshToVent) is double distance) answer.MeshToVentMm = UnitConversion.MmFromMetres(distance);
        return answer;
    }
}
