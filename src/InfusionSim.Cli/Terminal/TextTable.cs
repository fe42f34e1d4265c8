using System.Text;

namespace InfusionSim.Cli.Terminal;

/// <summary>A table in plain letters, its columns as wide as they need to be.</summary>
public static class TextTable
{
    private const string Gap = "   ";

    /// <summary>Lays rows out in columns.</summary>
    /// <param name="rows">Rows of cells, all of the same length; the first is the heading.</param>
    /// <param name="width">Letters that a line of the screen holds [-]; a wider table is told row by row. Null where nobody reads along an edge.</param>
    public static IReadOnlyList<string> Lines(IReadOnlyList<IReadOnlyList<string>> rows, int? width = null)
    {
        ArgumentNullException.ThrowIfNull(rows);
        string[] table = [.. InColumns(rows)];
        return width is int known && table.Any(line => line.Length > known) ? [.. RowByRow(rows, known)] : table;
    }

    private static IEnumerable<string> InColumns(IReadOnlyList<IReadOnlyList<string>> rows)
    {
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

    // What a row is about stands alone, its cells below it, each behind its heading.
    private static IEnumerable<string> RowByRow(IReadOnlyList<IReadOnlyList<string>> rows, int width)
    {
        foreach (IReadOnlyList<string> row in rows.Skip(1))
        {
            yield return row[0];
            IEnumerable<string> cells = Enumerable.Range(1, row.Count - 1).Select(column => $"{rows[0][column]} {row[column]}".Trim());
            foreach (string line in TextWrap.Fold("  " + string.Join("; ", cells), width)) yield return line;
        }
    }
}
