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
        string[] weak = [.. forecast.Findings.Where(finding => finding.Kind == FindingKind.LineEndWeak).Select(Text)];
        if (weak.Length == 0) yield break;
        string more = weak.Length > MostTold ? $"; and {weak.Length - MostTold} more" : "";
        yield return new FillLine("Lines", string.Join("; ", weak.Take(MostTold)) + more);
    }

    private static string Text(Finding finding) =>
        $"{finding.Line} feeds with {(finding.HasAmount ? Amounts.Percent(finding.Amount) : "part")} of its pressure at the far end";
}
