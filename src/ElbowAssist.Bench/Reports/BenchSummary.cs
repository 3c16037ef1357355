using System.Text;
using ElbowAssist.Bench.Comparing;
using ElbowAssist.Bench.Datasets;
using ElbowAssist.Bench.Tables;
using ElbowAssist.Reading;

namespace ElbowAssist.Bench.Reports;

/// <summary>The main figures of a bench over all films as a page of Markdown, to stand beside a model.</summary>
internal static class BenchSummary
{
    private static readonly (string Title, string Table, string[] Columns)[] Parts =
    [
        ("Films", "entrants", ["entrant", "films", "patients", "answered", "refused", "viewRight"]),
        ("Landmarks before any limit", "landmark-errors", ["entrant", "view", "error", "unit", "n", "missing", "mean", "meanLow", "meanHigh", "median", "p95"]),
        ("Share of landmarks within a distance", "success-rates", ["entrant", "view", "n", "within2mm", "within2mmLow", "within2mmHigh", "within2.5mm", "within3mm", "within4mm"]),
        ("Measurements as readings give them", "measurements",
            ["entrant", "view", "measurement", "unit", "n", "withheld", "bias", "mean", "meanLow", "meanHigh", "p95", "heldShare", "heldLow", "heldHigh", "medianWidth"]),
        ("Zones", "probabilities", ["entrant", "view", "what", "n", "calibrationError", "brier"]),
        ("Entrants against each other", "comparisons", ["first", "second", "view", "what", "unit", "patients", "difference", "low", "high", "permutationHolmP"]),
    ];

    public static string Of(FilmDataset dataset, IReadOnlyList<Table> tables, IReadOnlyList<(string Name, string Value)> facts)
    {
        var text = new StringBuilder("# Bench of elbow landmark models\n\n").Append(Caution.Text).Append("\n\n");
        if (dataset.Films.All(f => f.Truth.Simulated is not null))
        {
            text.Append("Every film is simulated, and truth is exact: these figures are not to be compared with those of challenges on real films, and promise nothing about films of patients.\n\n");
        }

        text.Append("Errors are absolute but for the bias; intervals (Low, High) are 95 %; held is the share of redraw intervals that hold the reference.\n");
        foreach (var (title, name, columns) in Parts)
        {
            if (tables.FirstOrDefault(t => t.Name == name) is { } table)
            {
                Append(text, title, table, columns);
            }
        }

        text.Append("\n## To come to the same figures\n\n");
        foreach (var (name, value) in facts)
        {
            text.Append("- ").Append(name).Append(": ").Append(value).Append('\n');
        }

        return text.ToString();
    }

    private static void Append(StringBuilder text, string title, Table table, string[] columns)
    {
        var index = table.Columns.Index().ToDictionary(c => c.Item, c => c.Index, StringComparer.Ordinal);
        text.Append("\n## ").Append(title).Append("\n\n| ").AppendJoin(" | ", columns).Append(" |\n|").Insert(text.Length, " --- |", columns.Length).Append('\n');
        foreach (var row in table.Rows.Where(r => !index.TryGetValue("group", out var group) || Strata.All.Equals(r[group])))
        {
            text.Append("| ").AppendJoin(" | ", columns.Select(c => Table.Shown(row[index[c]]).Replace("|", "\\|", StringComparison.Ordinal))).Append(" |\n");
        }
    }
}
