using System.Text;

namespace ElbowAssist.Drawing.Report;

/// <summary>The report as plain text.</summary>
internal static class ReportText
{
    private const int LineLength = 78;

    public static string Of(ReportContent content)
    {
        var text = new StringBuilder();
        Heading(text, content.Heading.ToUpperInvariant());
        Paragraph(text, string.Join(' ', content.Facts));
        Paragraph(text, content.Caution);

        Heading(text, "FOUND BY THE READER");
        Paragraph(text, string.Join(' ', content.WalkFacts));
        foreach (var step in content.Steps)
        {
            Paragraph(text, Closed($"{step.Title}: {string.Join("; ", step.Answers.Select(Answer))}"));
        }

        List(text, "TO THINK OF", [.. content.Prompts.Select(p => $"{p.Text} {p.Sources}"), .. content.MorePrompts is { } more ? new[] { more } : []]);
        List(text, "FILMS", [.. content.Films.Select(f => $"{f.Title} ({f.Id}): {(f.Refused ? "no reading was made." : $"can carry {(f.Carries.Count == 0 ? "nothing measured" : string.Join("; ", f.Carries))}.")}")]);
        foreach (var table in content.Measurements)
        {
            List(text, $"MEASURED BY THE TOOL, {table.Title.ToUpperInvariant()}", [.. table.Rows.Select(r => Row(table, r))]);
        }

        List(text, "FILMS TOGETHER", content.Together);
        List(text, "NOT JUDGED, AND WHY", content.NotJudged);
        List(text, "METHOD", content.Method);
        List(text, "HOW EACH IS LAID", content.Constructions);
        List(text, "SOURCES", [.. content.Sources.Select((s, i) => FormattableString.Invariant($"[{i + 1}] {s}"))]);
        Paragraph(text, content.Caution);
        return text.ToString();
    }

    private static string Closed(string text) => text[^1] is '.' or '?' or '!' ? text : text + ".";

    private static string Answer(AnswerContent a) =>
        $"{a.Question.TrimEnd('?')}: {a.Answer}{(a.Earlier is { } earlier ? $" (first answer: {earlier})" : "")}";

    private static string Row(MeasurementTable table, MeasurementRow row)
    {
        var cells = row.Cells.Zip(table.Films).Select(c => $"{c.Second}: {(c.First.Value is { } value ? $"{value}, {c.First.State}" : c.First.State)}.{Follow(c.First.Reasons)}");
        var differences = row.Differences.Select(d => $" {ReportWords.Sentence(d)}.");
        var references = row.References.Count == 0 ? "" : $" Published: {string.Join("; ", row.References)}.";
        return $"{row.Title}. {string.Join(' ', cells)}{string.Concat(differences)}{references}";
    }

    private static string Follow(IReadOnlyList<string> sentences) => sentences.Count == 0 ? "" : " " + string.Join(' ', sentences);

    private static void List(StringBuilder text, string heading, IReadOnlyList<string> items)
    {
        if (items.Count == 0)
        {
            return;
        }

        Heading(text, heading);
        foreach (var item in items)
        {
            Item(text, item);
        }

        text.Append('\n');
    }

    private static void Heading(StringBuilder text, string heading) => text.Append(heading).Append('\n');

    private static void Paragraph(StringBuilder text, string paragraph)
    {
        Wrap(text, paragraph, "", "");
        text.Append('\n');
    }

    private static void Item(StringBuilder text, string item) => Wrap(text, item, "- ", "  ");

    private static void Wrap(StringBuilder text, string words, string first, string next)
    {
        var line = new StringBuilder(first);
        var empty = true;
        foreach (var word in words.Split((char[])[' ', '\n', '\r', '\t'], StringSplitOptions.RemoveEmptyEntries))
        {
            if (!empty && line.Length + 1 + word.Length > LineLength)
            {
                text.Append(line).Append('\n');
                line.Clear().Append(next);
                empty = true;
            }

            line.Append(empty ? "" : " ").Append(word);
            empty = false;
        }

        text.Append(line).Append('\n');
    }
}
