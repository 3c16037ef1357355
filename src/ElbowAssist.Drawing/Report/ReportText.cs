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
            Paragraph(text, $"{step.Title}: {string.Join("; ", step.Answers.Select(Answer))}.");
        }

        Heading(text, "PROPOSED BY THE TOOL");
        foreach (var film in content.Films)
        {
            Paragraph(text, $"{film.Title} ({film.Id}).");
            foreach (var m in film.Measurements)
            {
                Item(text, $"{m.Title}: {m.Value}, {m.State}.{Follow(m.Reasons)}{(m.References.Count == 0 ? "" : " Published: " + string.Join("; ", m.References) + ".")}");
            }
        }

        List(text, "FILMS TOGETHER", content.Together);
        List(text, "TO THINK OF", [.. content.Prompts.Select(p => $"{p.Text} {p.Sources}"), .. content.MorePrompts is { } more ? new[] { more } : []]);
        List(text, "NOT JUDGED, AND WHY", content.NotJudged);
        List(text, "METHOD", content.Method);
        List(text, "SOURCES", [.. content.Sources.Select((s, i) => FormattableString.Invariant($"[{i + 1}] {s}"))]);
        Paragraph(text, content.Caution);
        return text.ToString();
    }

    private static string Answer(AnswerContent a) =>
        $"{a.Question.TrimEnd('?')}: {a.Answer}{(a.Earlier is { } earlier ? $" (first answer: {earlier})" : "")}";

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
