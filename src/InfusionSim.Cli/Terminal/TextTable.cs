using System.Text;

namespace InfusionSim.Cli.Terminal;

/// <summary>A table in plain letters, its columns as wide as they need to be.</summary>
public static class TextTable
{
    private const string Gap = "   ";

    /// <summary>Lays rows out in columns.</summary>
    /// <param name="rows">Rows of cells, all of the same length.</param>
    public static IEnumerable<string> Lines(IReadOnlyList<IReadOnlyList<string>> rows)
    {
        ArgumentNullException.ThrowIfNull(rows);
        if (rows.Count == 0) yield break;
        int[] widths = [.. Enumerable.Range(0, rows[0].Count).Select(column => rows.Max(row => row[column].Length))];
        foreach (IReadOnlyList<string> row in rows)
        {
            StringBuilder line = new();
            for (int column = 0; column < row.Count; column++)
                line.Append(row[column].PadRight(widths[column])).Append(Gap);
            yield return line.ToString().TrimEnd();
        }
    }
}
