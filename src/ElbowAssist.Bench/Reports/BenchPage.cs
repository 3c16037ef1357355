using System.Text;
using ElbowAssist.Bench.Comparing;
using ElbowAssist.Bench.Tables;
using ElbowAssist.Reading;

namespace ElbowAssist.Bench.Reports;

/// <summary>The page of a bench.</summary>
internal static class BenchPage
{
    /// <summary>Marks that the part about time and memory stands between.</summary>
    public const string TimingBegins = "<section id=\"timing\">", TimingEnds = "</section><!-- timing -->";

    private const string Style = """
        * { box-sizing: border-box; }
        body { font: 13px/1.45 "DejaVu Sans", Verdana, sans-serif; color: #1c1c1c; background: #fff; max-width: 1120px; margin: 0 auto; padding: 16px; }
        h1 { font-size: 21px; } h2 { font-size: 16px; margin: 28px 0 8px; border-bottom: 1px solid #1c1c1c; padding-bottom: 3px; }
        .caution { border: 1.5px solid #1c1c1c; padding: 8px 12px; margin: 12px 0; }
        .plots { display: grid; grid-template-columns: repeat(auto-fill, minmax(340px, 1fr)); gap: 12px; }
        .films { display: grid; grid-template-columns: repeat(auto-fill, minmax(250px, 1fr)); gap: 14px; }
        figure { margin: 0; } figure svg { width: 100%; background: #15181B; display: block; } figcaption { font-size: 11px; margin-top: 4px; overflow-wrap: anywhere; }
        .plot { width: 100%; font-size: 10px; } .plot .head { font-size: 11px; font-weight: 600; }
        .grid { stroke: #d6d6d6; stroke-width: 0.6; } .level { stroke: #6b6b6b; stroke-width: 0.9; stroke-dasharray: 5 3; }
        .curve { fill: none; stroke: #1c1c1c; stroke-width: 1.5; } .dot { fill: #1c1c1c; fill-opacity: 0.5; }
        details { margin: 8px 0; } summary { cursor: pointer; } .wide { overflow-x: auto; }
        table { border-collapse: collapse; font-size: 11px; margin: 6px 0; } th, td { padding: 1px 8px 1px 0; text-align: left; border-bottom: 1px solid #dcdcdc; white-space: nowrap; }
        th { font-weight: 600; } .n { text-align: right; font-variant-numeric: tabular-nums; } dl { display: grid; grid-template-columns: max-content 1fr; gap: 2px 14px; } dt { font-weight: 600; } dd { margin: 0; overflow-wrap: anywhere; }
        """;

    public static string Of(
        Contest contest, IReadOnlyList<Table> tables, IReadOnlyList<Table> timing, IReadOnlyList<(string Name, string Value)> facts, IReadOnlyList<FilmFigure> figures)
    {
        var text = new StringBuilder();
        text.Append("<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><meta name=\"viewport\" content=\"width=device-width\"><title>Bench of elbow landmark models</title><style>\n").Append(Style).Append("\n</style></head><body>\n");
        text.Append("<h1>Bench of elbow landmark models</h1>\n").Append(Cautioned);
        text.Append("<p>Landmark errors are taken before any limit or refusal, so that nobody scores better by refusing more; measurements are taken as the readings give them. Whole patients are drawn and permuted. Intervals are 95 %. Empty cells stand for what cannot be worked out.</p>\n");
        Section(text, "Entrants and landmarks", tables, ["entrants", "landmark-errors", "success-rates"], BenchPlots.Success(tables));
        Section(text, "Each landmark", tables, ["landmarks"], []);
        Section(text, "Measurements", tables, ["measurements", "measurement-agreement", "landmark-agreement"], BenchPlots.BlandAltman(contest));
        Section(text, "Readers", tables, ["line-agreement", "readers-together", "readers-with-and-without"], []);
        Section(text, "Entrants against each other", tables, ["comparisons"], []);
        Section(text, "Stated probabilities", tables, ["probabilities"], BenchPlots.Probabilities(tables));
        Section(text, "Certainty and refusal", tables, ["risk-area", "refusals", "withheld-values"], BenchPlots.Risk(tables));
        if (figures.Count > 0)
        {
            text.Append("<h2>Films</h2>\n<p>Solid yellow: the reference. Dashed sky blue: the entrant, joined to the reference of the same landmark. A refused film shows the reference alone.</p>\n<div class=\"films\">\n");
            text.AppendJoin("", figures.Select(f => f.ToHtml())).Append("</div>\n");
        }

        text.Append("<h2>To come to the same figures</h2>\n<dl>");
        foreach (var (name, value) in facts)
        {
            text.Append("<dt>").Append(Html.Text(name)).Append("</dt><dd>").Append(Html.Text(value)).Append("</dd>");
        }

        text.Append("</dl>\n").Append(TimingBegins).Append("<h2>Time and memory</h2>\n").AppendJoin("", timing.Select(Html.Of)).Append(TimingEnds);
        return text.Append(Cautioned).Append("</body></html>\n").ToString();
    }

    private static string Cautioned => $"<p class=\"caution\">{Html.Text(Caution.Text)}</p>\n";

    private static void Section(StringBuilder text, string title, IReadOnlyList<Table> tables, string[] names, IEnumerable<LinePlot> plots)
    {
        var shown = names.Select(n => tables.FirstOrDefault(t => t.Name == n)).OfType<Table>().ToList();
        var drawn = plots.Select(p => p.ToSvg()).Where(p => p.Length > 0).ToList();
        if (shown.Count == 0 && drawn.Count == 0)
        {
            return;
        }

        text.Append("<h2>").Append(Html.Text(title)).Append("</h2>\n");
        if (drawn.Count > 0)
        {
            text.Append("<div class=\"plots\">\n").AppendJoin("", drawn).Append("</div>\n");
        }

        text.AppendJoin("", shown.Select(Html.Of));
    }
}
