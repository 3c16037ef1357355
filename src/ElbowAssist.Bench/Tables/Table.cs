using System.Globalization;
using System.Text;

namespace ElbowAssist.Bench.Tables;

/// <summary>A table of figures: written as text, CSV or JSON.</summary>
/// <param name="Name">File name without extension.</param>
/// <param name="Title">What it shows.</param>
/// <param name="Columns">Column names.</param>
/// <param name="Rows">Cells: texts, whole numbers, doubles (NaN for none), truth values.</param>
public sealed record Table(string Name, string Title, IReadOnlyList<string> Columns, IReadOnlyList<IReadOnlyList<object>> Rows)
{
    /// <summary>Comma-separated values with a header.</summary>
    public string ToCsv()
    {
        var text = new StringBuilder();
        foreach (var row in Rows.Prepend([.. Columns]))
        {
            text.AppendJoin(',', row.Select(cell => Quoted(Cell(cell)))).Append('\n');
        }

        return text.ToString();
    }

    /// <summary>Aligned columns under the title.</summary>
    public string ToText()
    {
        List<IReadOnlyList<string>> lines = [Columns, .. Rows.Select(r => (IReadOnlyList<string>)[.. r.Select(Cell)])];
        int[] widths = [.. Enumerable.Range(0, Columns.Count).Select(c => lines.Max(l => l[c].Length))];
        var text = new StringBuilder().Append("== ").Append(Title).Append('\n');
        foreach (var line in lines)
        {
            text.AppendJoin("  ", line.Select((cell, c) => c == 0 ? cell.PadRight(widths[c]) : cell.PadLeft(widths[c]))).Append('\n');
        }

        return text.Append('\n').ToString();
    }

    private static string Quoted(string cell) => cell.IndexOfAny([',', '"', '\n']) < 0 ? cell : $"\"{cell.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";

    private static string Cell(object cell) => cell switch
    {
        double.NaN => "",
        double number => number.ToString("0.####", CultureInfo.InvariantCulture),
        bool held => held ? "yes" : "no",
        IFormattable other => other.ToString(null, CultureInfo.InvariantCulture),
        _ => cell.ToString() ?? "",
    };
}
