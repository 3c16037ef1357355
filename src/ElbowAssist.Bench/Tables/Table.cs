using System.Globalization;
using System.Text;
using System.Text.Json;

namespace ElbowAssist.Bench.Tables;

/// <summary>A table of figures: written as text, CSV or JSON.</summary>
/// <param name="Name">File name without extension.</param>
/// <param name="Title">What it shows.</param>
/// <param name="Columns">Column names.</param>
/// <param name="Rows">Cells: texts, whole numbers, doubles (NaN for none), truth values.</param>
public sealed record Table(string Name, string Title, IReadOnlyList<string> Columns, IReadOnlyList<IReadOnlyList<object>> Rows)
{
    /// <summary>Comma-separated values with a header; numbers to the last bit, as in <see cref="WriteJson"/>.</summary>
    public string ToCsv()
    {
        var text = new StringBuilder();
        foreach (var row in Rows.Prepend([.. Columns]))
        {
            text.AppendJoin(',', row.Select(cell => Quoted(Exact(cell)))).Append('\n');
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

    /// <summary>Writes name, title, columns and rows as one JSON object; what is not a number is null.</summary>
    public void WriteJson(Utf8JsonWriter json)
    {
        ArgumentNullException.ThrowIfNull(json);
        json.WriteStartObject();
        json.WriteString("name", Name);
        json.WriteString("title", Title);
        json.WriteStartArray("rows");
        foreach (var row in Rows)
        {
            json.WriteStartObject();
            foreach (var (column, cell) in Columns.Zip(row))
            {
                json.WritePropertyName(column);
                Write(json, cell);
            }

            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, object cell)
    {
        switch (cell)
        {
            case double number when double.IsFinite(number):
                json.WriteNumberValue(number);
                break;
            case double:
                json.WriteNullValue();
                break;
            case int number:
                json.WriteNumberValue(number);
                break;
            case bool held:
                json.WriteBooleanValue(held);
                break;
            default:
                json.WriteStringValue(Cell(cell));
                break;
        }
    }

    /// <summary>A cell as people read it: numbers to four places.</summary>
    internal static string Shown(object cell) => Cell(cell);

    private static string Exact(object cell) =>
        cell is double number && double.IsFinite(number) ? number.ToString("R", CultureInfo.InvariantCulture) : Cell(cell);

    private static string Quoted(string cell) => cell.IndexOfAny([',', '"', '\n']) < 0 ? cell : $"\"{cell.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";

    private static string Cell(object cell) => cell switch
    {
        double number when !double.IsFinite(number) => "",
        double number => number.ToString("0.####", CultureInfo.InvariantCulture),
        bool held => held ? "yes" : "no",
        IFormattable other => other.ToString(null, CultureInfo.InvariantCulture),
        _ => cell.ToString() ?? "",
    };
}
