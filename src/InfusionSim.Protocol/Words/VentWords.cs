using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Words;

/// <summary>The lines about the vents: when each is wet, how much of the cloth is full by then, how much resin is drawn off.</summary>
internal static class VentWords
{
    /// <summary>Vents that are told one by one [-]; of the rest only the number is.</summary>
    private const int MostTold = 6;

    /// <summary>One line a vent.</summary>
    public static IEnumerable<FillLine> Lines(FillForecast forecast, InfusionPlan plan)
    {
        if (forecast.Vents.Count == 0) yield return new FillLine("Vent", "none");
        for (int k = 0; k < Math.Min(MostTold, forecast.Vents.Count); k++)
        {
            bool holdsResin = k < plan.Vents.Count && plan.Vents[k].Kind == VentKind.Membrane;
            yield return new FillLine(k == 0 ? "Vent" : "", Text(forecast.Vents[k], holdsResin, forecast, plan.Resin.DensityKgPerM3 / 1000));
        }

        if (forecast.Vents.Count > MostTold) yield return new FillLine("", $"and {forecast.Vents.Count - MostTold} more (--json lists all)");
    }

    private static string Text(VentForecast vent, bool holdsResin, FillForecast forecast, double gramsPerCm3)
    {
        string name = holdsResin ? $"{vent.Name} (membrane)" : vent.Name;
        if (!vent.HasArrivalTimeS) return $"{name} stays dry";
        string filled = vent.HasFilledFractionAtArrival ? $", {Amounts.Percent(vent.FilledFractionAtArrival)} filled by then" : "";
        string wet = $"{name} wet at {Amounts.Time(vent.ArrivalTimeS)}{filled}";
        if (holdsResin) return $"{wet}; it holds the resin";
        string drawnOff = $"{wet}; {Amounts.Weight(vent.ResinOutG)} out";
        if (ClampWords.ShutBy(vent.Name, forecast) is ClampEvent shut) return $"{drawnOff}, shut at {Amounts.Time(shut.TimeS)}";
        if (forecast.Outcome == Outcome.GelsFirst || vent.ResinOutCm3PerMin < 0.05) return drawnOff;
        return $"{drawnOff}. Then {Amounts.Volume(vent.ResinOutCm3PerMin)} ({Amounts.Weight(vent.ResinOutCm3PerMin * gramsPerCm3)}) each minute it stays open";
    }
}
