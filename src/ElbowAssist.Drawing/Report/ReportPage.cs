using System.Xml.Linq;
using ElbowAssist.Anatomy.Rules;
using ElbowAssist.Drawing.Growth;
using ElbowAssist.Drawing.Overlay;
using ElbowAssist.Reading.Studies;
using ElbowAssist.Reading.Walks;

namespace ElbowAssist.Drawing.Report;

/// <summary>The report as one HTML page.</summary>
internal static class ReportPage
{
    public static string Of(Study study, ReportContent content, IReadOnlyDictionary<string, GreyPicture> pictures)
    {
        var page = E("html", A("lang", "en"),
            E("head",
                E("meta", A("charset", "utf-8")),
                E("meta", A("name", "viewport"), A("content", "width=device-width, initial-scale=1")),
                E("meta", A("http-equiv", "Content-Security-Policy"), A("content", "default-src 'none'; img-src data:; style-src 'unsafe-inline'")),
                E("title", content.Heading),
                E("style", ReportStyle.Css)),
            E("body",
                E("h1", content.Heading),
                content.Facts.Select(f => E("p", f)),
                Caution(content),
                Reader(content),
                Prompts(content),
                Films(study, content, pictures),
                Measurements(content),
                Section("Films together", "tool", Bullets(content.Together)),
                Strip(study),
                Section("Not judged, and why", null, Bullets(content.NotJudged)),
                Section("How to read this", null, Bullets(content.Method), Small(Bullets(content.Constructions))),
                Sources(content),
                E("p", A("class", "caution last"), content.Caution)));
        return "<!DOCTYPE html>\n" + page.ToString(SaveOptions.DisableFormatting) + "\n";
    }

    private static XElement Caution(ReportContent content) => E("p", A("class", "caution"), content.Caution);

    private static IEnumerable<XElement> Reader(ReportContent content) =>
    [
        E("h2", "Found by the reader"),
        E("div", A("class", "reader"),
            content.WalkFacts.Select(f => E("p", f)),
            E("div", A("class", "steps"), content.Steps.Select(Step), "")),
    ];

    private static XElement Step(StepContent step) => E("div", A("class", "step"),
        E("h3", step.Title, E("span", A("class", "small"), step.At.Length == 0 ? "" : " · " + step.At)),
        E("table", E("tbody", step.Answers.Select(a => E("tr",
            E("td", a.Question),
            E("td", a.Answer, Aside(a)))))));

    private static XElement? Aside(AnswerContent a)
    {
        List<string> words = [];
        if (a.Earlier is { } earlier)
        {
            words.Add($"first answer: {earlier}");
        }

        if (a.ToolWasVisible)
        {
            words.Add("proposals on view");
        }

        return words.Count == 0 ? null : E("span", A("class", "small"), " · " + string.Join(" · ", words));
    }

    private static IEnumerable<XElement> Films(Study study, ReportContent content, IReadOnlyDictionary<string, GreyPicture> pictures) =>
    [
        E("h2", "Films and what they carry"),
        E("p", A("class", "small"), "On the films the tool's lines are dashed sky blue, the reader's solid yellow; the band beside a line is how far it would move if laid again. A ruler from front to back shows the capitellum in thirds."),
        E("div", A("class", "films"), study.Films.Zip(content.Films).Select(f => Film(f.First, f.Second, pictures.GetValueOrDefault(f.First.Id)))),
    ];

    private static XElement Film(StudyFilm film, FilmContent content, GreyPicture? picture)
    {
        var options = new OverlayOptions { Film = picture, Legend = false, Letters = true };
        var svg = OverlaySvg.Write(film.Reading, options);
        var key = OverlayScene.Of(film.Reading, options).Key;
        return E("figure",
            E("img", A("alt", content.Title), A("src", "data:image/svg+xml;base64," + Convert.ToBase64String(svg))),
            E("figcaption",
                E("strong", content.Title),
                E("p", A("class", "small"), content.Facts + (picture is null ? " The film itself was not given; drawn from its landmarks." : "")),
                key.Count == 0 ? null : E("p", A("class", "small"), string.Join("; ", key.Select(k => $"{k.Letter} {k.Line}")) + "."),
                content.Refused
                    ? E("p", "No reading was made of this film; see \"Not judged\".")
                    : E("p", A("class", "small"), "Can carry: " + (content.Carries.Count == 0 ? "nothing measured." : string.Join("; ", content.Carries) + "."))));
    }

    private static IEnumerable<XElement> Measurements(ReportContent content) => content.Measurements.Count == 0
        ? []
        :
        [
            E("h2", "Measured by the tool"),
            E("div", A("class", "tool"), content.Measurements.SelectMany(t => new[] { E("h3", t.Title), Table(t) })),
        ];

    private static XElement Table(MeasurementTable table) => E("table", A("class", "measurements"),
        E("thead", E("tr",
            E("th", "Value (redraw interval)"),
            table.Films.Select(f => E("th", f)),
            table.Rows.Any(r => r.Differences.Count > 0) ? E("th", "Difference") : null,
            E("th", "Published, for comparison"))),
        E("tbody", table.Rows.Select(row => E("tr",
            E("td", row.Title),
            row.Cells.Select(Cell),
            table.Rows.Any(r => r.Differences.Count > 0) ? E("td", A("class", "small"), string.Join("; ", row.Differences)) : null,
            E("td", A("class", "small"), row.References.Count == 0 ? "no published range held" : string.Join("; ", row.References))))));

    private static XElement Cell(MeasurementCell cell) => cell.Value is { } value
        ? E("td", E("strong", value), E("div", A("class", "small"), string.Join(' ', [cell.State + ".", .. cell.Reasons])))
        : E("td", A("class", "small"), cell.State);

    private static IEnumerable<XElement> Prompts(ReportContent content) => content.Prompts.Count == 0
        ? []
        :
        [
            E("div", A("class", "prompts"),
                Section("To think of", "tool",
                    E("ol", content.Prompts.Select(p => E("li", p.Text + " ", E("span", A("class", "small"), (p.Films.Length > 0 ? p.Films + " " : "") + p.Sources)))),
                    content.MorePrompts is { } more ? E("p", A("class", "small"), more) : null)),
        ];

    private static IEnumerable<XElement> Strip(Study study)
    {
        if (study.Maturity is not (Maturity.Child or Maturity.Adolescent))
        {
            return [];
        }

        var marks = study.Walk is { } walk ? WalkMarks.Of(walk) : study.Marks;
        return [E("div", A("class", "strip"), E("h2", "Growth centres"), GrowthStripSvg.Drawing(study.Patient, marks.GrowthCentres))];
    }

    private static IEnumerable<XElement> Sources(ReportContent content) =>
        Section("Sources", null, E("ol", A("class", "small sources"), content.Sources.Select(s => E("li", s))));

    private static IEnumerable<XElement> Section(string heading, string? kind, params XElement?[] content) =>
        content.OfType<XElement>().Any()
            ? [E("h2", heading), kind is null ? E("div", content) : E("div", A("class", kind), content)]
            : [];

    private static XElement? Bullets(IReadOnlyList<string> items) =>
        items.Count == 0 ? null : E("ul", items.Select(i => E("li", i)));

    private static XElement? Small(XElement? element)
    {
        element?.Add(A("class", "small"));
        return element;
    }

    private static XElement E(string name, params object?[] content) => new(name, content);

    private static XAttribute A(string name, string value) => new(name, value);
}
