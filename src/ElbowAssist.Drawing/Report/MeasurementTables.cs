using ElbowAssist.Anatomy.Measurements;
using ElbowAssist.Anatomy.Rules.References;
using ElbowAssist.Drawing.Wording;
using ElbowAssist.Reading;
using ElbowAssist.Reading.Studies;

namespace ElbowAssist.Drawing.Report;

/// <summary>The measurements of a study, films of one view side by side.</summary>
internal static class MeasurementTables
{
    public static IReadOnlyList<MeasurementTable> Of(Study study, ReportSources sources) =>
    [
        .. study.Films.GroupBy(f => f.View).Select(view => Table(study, [.. view], sources)).Where(t => t.Rows.Count > 0),
    ];

    /// <summary>How each measurement of the tables is laid, once.</summary>
    public static IReadOnlyList<string> Constructions(Study study, ReportSources sources) =>
    [
        .. Given(study.Films).DistinctBy(m => m.Name)
            .Select(m => $"{ReportWords.Sentence(MeasurementTitles.Of(m.Name))}: {Construction(m)} {sources.Mark(m.Source)}"),
    ];

    // What holds of one film only, such as the angle in another convention, stands beside that film's value.
    private static string Construction(Measurement m) => Definition(m.Name)?.Note ?? m.Note;

    private static MeasurementDefinition? Definition(string name) =>
        ViewMeasurements.Lateral.Concat(ViewMeasurements.Ap).FirstOrDefault(d => d.Name == name);

    private static MeasurementTable Table(Study study, StudyFilm[] films, ReportSources sources) => new(
        ReportWords.Sentence(ReportWords.View(films[0].View)),
        [.. films.Select(f => $"{ReportWords.Sentence(ReportWords.Side(f.Side))}, {ReportWords.Context(f.Context)}")],
        [
            .. Given(films).Select(m => m.Name).Distinct(StringComparer.Ordinal).Select(name => new MeasurementRow(
                ReportWords.Sentence(MeasurementTitles.Of(name)),
                [.. films.Select(f => Cell(f, name))],
                [.. Differences.Of(study, name, films)],
                [.. ReferenceTable.For(name, study.Patient).Select(r => $"{r.Text} {sources.Mark(r.Source.Citation)}")])),
        ]);

    private static MeasurementCell Cell(StudyFilm film, string name)
    {
        var m = film.Reading.Measurements.FirstOrDefault(m => m.Name == name);
        if (m is null || m.State == MeasurementState.Withheld)
        {
            return new(null, StateWords.Of(MeasurementState.Withheld), []);
        }

        var sentences = film.Reading.Reasons.ToDictionary(r => r.Code, r => r.Text, StringComparer.Ordinal);
        var beside = m.Value is { } value ? Definition(name)?.NoteBeside(value) : null;
        return new(
            Figures.Of(m),
            StateWords.Of(m.State),
            [.. beside is null ? [] : new[] { beside }, .. m.Reasons.Select(r => sentences.GetValueOrDefault(r)).OfType<string>()]);
    }

    private static IEnumerable<Measurement> Given(IEnumerable<StudyFilm> films) =>
        films.SelectMany(f => f.Reading.Measurements).Where(m => m.State != MeasurementState.Withheld);
}
