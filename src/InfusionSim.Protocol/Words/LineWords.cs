using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Words;

/// <summary>The line about feed lines that starve their far end.</summary>
internal static class LineWords
{
    /// <summary>Lines that are told one by one [-].</summary>
    private const int MostTold = 3;

    /// <summary>The line; none when every far end feeds well.</summary>
    public static IEnumerable<FillLine> Lines(FillForecast forecast)
    {
        string[] weak = [.. forecast.Findings.Where(finding => finding.Kind == FindingKind.LineEndWeak).Select(finding => Text(finding, forecast))];
        if (weak.Length == 0) yield break;
        string more = weak.Length > MostTold ? $"; and {weak.Length - MostTold} more" : "";
        yield return new FillLine("Lines", string.Join("; ", weak.Take(MostTold)) + more);
    }

    /// <summary>Whether a finding speaks of a vent.</summary>
    public static bool IsVent(Finding finding, FillForecast forecast) => forecast.Vents.Any(vent => vent.Name == finding.Line);

    private static string Text(Finding finding, FillForecast forecast)
    {
        string share = finding.HasAmount ? Amounts.Percent(finding.Amount) : "part";
        return IsVent(finding, forecast)
            ? $"{finding.Line} draws with {share} of the vacuum at its far end"
            : $"{finding.Line} feeds with {share} of the pressure at its far end";
    }
}
