using System.Text;
using System.Text.Json;
using ElbowAssist.Bench.Comparing;
using ElbowAssist.Bench.Datasets;
using ElbowAssist.Bench.Tables;
using ElbowAssist.Reading;

namespace ElbowAssist.Bench.Reports;

/// <summary>
/// A bench as files: a page that needs nothing else, the same figures as JSON and as one CSV file per table, and the main
/// ones as Markdown. But for what is told of time and memory, equal runs give equal bytes.
/// </summary>
public sealed class BenchReport
{
    /// <summary>Schema identifier of <c>results.json</c>.</summary>
    public const string SchemaId = "elbowassist/bench/1";

    /// <summary>Name of the page.</summary>
    public const string PageFile = "report.html";

    /// <summary>Name of the figures as JSON.</summary>
    public const string JsonFile = "results.json";

    /// <summary>Name of the main figures as Markdown.</summary>
    public const string SummaryFile = "summary.md";

    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false);
    private readonly Contest contest;
    private readonly IReadOnlyList<(string Name, string Value)> facts;
    private readonly IReadOnlyList<Table> tables;

    /// <summary>Works out every figure.</summary>
    /// <param name="dataset">The films and their reference.</param>
    /// <param name="entrants">Who is scored; their names differ.</param>
    /// <param name="facts">What another run needs to come to the same figures.</param>
    public BenchReport(FilmDataset dataset, IReadOnlyList<Entrant> entrants, IReadOnlyList<(string Name, string Value)> facts)
    {
        contest = new Contest(dataset, entrants);
        tables = BenchTables.Of(contest);
        this.facts = [.. facts, .. Seeds];
    }

    /// <summary>Figures, time and memory apart.</summary>
    public IReadOnlyList<Table> Tables => tables;

    /// <summary>What to look at first: who answered, landmark errors and success rates over all films, comparisons.</summary>
    public IReadOnlyList<Table> Headlines =>
    [
        .. tables.Where(t => t.Name is "entrants" or "landmark-errors" or "success-rates" or "comparisons").Select(t => t.Columns.ToList().IndexOf("group") is >= 0 and var group
            ? t with { Rows = [.. t.Rows.Where(r => Strata.All.Equals(r[group]))] }
            : t),
    ];

    private static (string, string)[] Seeds { get; } =
        [("seeds", "bootstrap 20000 (1000 draws of patients), comparisons 20001, readers 20002 (10000 sign changes); redraws of each film by the tool's own seed")];

    /// <summary>Films worth a look: for each entrant and view the worst, the median and up to two refused ones.</summary>
    public IReadOnlyList<FilmChoice> Choices => FilmChoice.Of(contest);

    /// <summary>The files.</summary>
    /// <param name="timing">Time and memory; the only part that differs between runs.</param>
    /// <param name="figures">Pictures of the chosen films.</param>
    public IReadOnlyList<(string Name, byte[] Content)> Files(IReadOnlyList<Table> timing, IReadOnlyList<FilmFigure> figures) =>
    [
        .. tables.Concat(timing).Select(t => (t.Name + ".csv", Utf8.GetBytes(t.ToCsv()))),
        (JsonFile, Json(timing)),
        (SummaryFile, Utf8.GetBytes(BenchSummary.Of(contest.Dataset, tables, facts))),
        (PageFile, Utf8.GetBytes(BenchPage.Of(contest, tables, timing, facts, figures))),
    ];

    private byte[] Json(IReadOnlyList<Table> timing)
    {
        using var buffer = new MemoryStream();
        using (var json = new Utf8JsonWriter(buffer, new JsonWriterOptions { Indented = true, NewLine = "\n" }))
        {
            json.WriteStartObject();
            json.WriteString("schema", SchemaId);
            json.WriteString("caution", Caution.Text);
            json.WriteStartObject("reproduction");
            foreach (var (name, value) in facts)
            {
                json.WriteString(name, value);
            }

            json.WriteEndObject();
            Write(json, "tables", tables);
            Write(json, "timing", timing);
            json.WriteEndObject();
        }

        return buffer.ToArray();
    }

    private static void Write(Utf8JsonWriter json, string name, IReadOnlyList<Table> tables)
    {
        json.WriteStartArray(name);
        foreach (var table in tables)
        {
            table.WriteJson(json);
        }

        json.WriteEndArray();
    }
}
