using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Words;

/// <summary>The line about the tool side: how long and how far it stays behind what one sees through the bag, and where the mesh should end.</summary>
internal static class SideWords
{
    /// <summary>Share of the time to the end below which the tool side keeps up [-] (our own judgement: nobody sees it).</summary>
    private const double KeepsUp = 0.01;

    /// <summary>The line; none for a panel of one layer.</summary>
    public static IEnumerable<FillLine> Lines(FillForecast forecast)
    {
        if (forecast.Lag is not Lag lag) yield break;
        double behind = 60 * lag.LargestMin;
        if (behind <= KeepsUp * forecast.EndTimeS)
        {
            yield return new FillLine("Tool", "the tool side keeps up with the bag side");
            yield break;
        }

        string trail = lag.HasLengthMm && lag.LengthMm >= 1 ? $", its front {Amounts.Length(lag.LengthMm)}" : "";
        yield return new FillLine("Tool", $"the tool side is up to {Amounts.Time(behind)} behind the bag side{trail}{Advice(lag)}");
    }

    /// <summary>Where the mesh should end, for a sentence that goes on; empty when it ends soon enough.</summary>
    public static string Advice(Lag lag)
    {
        if (!lag.HasMeshToVentMm) return "";
        if (!lag.HasStopMeshBeforeVentMm) return "; on this panel it has no room to catch up before the vent: take a slower mesh or less of it";
        if (lag.StopMeshBeforeVentMm < 1) return "";
        return lag.MeshToVentMm >= lag.StopMeshBeforeVentMm
            ? $"; the mesh ends {Amounts.Length(lag.MeshToVentMm)} before the vent: far enough"
            : $"; end the mesh {Amounts.Length(lag.StopMeshBeforeVentMm)} before the vent";
    }
}
