using System.Globalization;
using ElbowAssist.Reading.Assembly;
using ElbowAssist.Reading.Studies;

namespace ElbowAssist.Drawing.Report;

/// <summary>From a study to what its report says.</summary>
internal static class ReportContents
{
    public static ReportContent Of(Study study)
    {
        var sources = new ReportSources();
        FilmContent[] films = [.. study.Films.Select(FilmContents.Of)];
        var visible = study.VisiblePrompts;
        PromptContent[] prompts = [.. visible.Select(p => new PromptContent(p.Text, sources.Mark(p.Source), string.Join(", ", p.FilmIds)))];
        var settled = study.Walk?.Settled.Select(s => s.Code).ToHashSet(StringComparer.Ordinal) ?? [];
        var waiting = study.Prompts.Count(p => !settled.Contains(p.Code)) - visible.Count;
        return new ReportContent
        {
            Heading = "Elbow radiographs: a second look",
            Facts =
            [
                ReportWords.Sentence(ReportWords.Patient(study.Patient)) + ".",
                $"Question about: {ReportWords.Side(study.InjuredSide)}.",
                string.Create(CultureInfo.InvariantCulture, $"Films: {study.Films.Count} ({string.Join("; ", study.Films.Select(f => $"{ReportWords.Side(f.Side)} {ReportWords.View(f.View)}, {ReportWords.Context(f.Context)}"))})."),
            ],
            Caution = study.CautionText,
            WalkFacts = WalkContents.Facts(study.Walk),
            Steps = WalkContents.Steps(study.Walk),
            Films = films,
            Measurements = MeasurementTables.Of(study, sources),
            Together = [.. study.Conflicts.Select(c => c.Text), .. study.CrossViewNotes.Select(n => n.Text)],
            Prompts = prompts,
            MorePrompts = waiting > 0
                ? string.Create(CultureInfo.InvariantCulture, $"{waiting} more {(waiting == 1 ? "waits" : "wait")} in the study file; at most three are shown until they are settled.")
                : null,
            NotJudged = [.. NotJudged(study, films)],
            Method = [.. Method(study)],
            Constructions = MeasurementTables.Constructions(study, sources),
            Sources = sources.Citations,
        };
    }

    private static IEnumerable<string> NotJudged(Study study, FilmContent[] films)
    {
        if (WalkContents.CannotTrace(study.Walk).ToList() is { Count: > 0 } untraced)
        {
            yield return $"By the reader: {string.Join("; ", untraced)}.";
        }

        foreach (var view in study.MissingViews)
        {
            yield return view.Text;
        }

        foreach (var film in films.Where(f => f.CannotCarry.Count > 0))
        {
            var what = film.Refused ? "no reading was made" : "the film cannot carry";
            yield return $"{film.Title} ({film.Id}), {what}: {string.Join(" ", film.CannotCarry)}";
        }
    }

    private static IEnumerable<string> Method(Study study)
    {
        yield return "Redraw interval: where the value would fall in 95 of 100 repeated layings on the same film. It says nothing about fracture.";
        yield return "Either-side: the redraw interval, or a second accepted construction, lies on both sides of a limit.";
        if (study.Films.Where(f => AssumedSpread.In(f.Reading)).Select(f => f.Id).ToList() is { Count: > 0 } assumed)
        {
            yield return $"{string.Join(", ", assumed)}: the landmarks came without a spread. {AssumedSpread.Note}";
        }

        var models = study.Films.SelectMany(f => f.Reading.Models).Select(m => $"{m.Name} {m.Version}").Distinct().ToList();
        yield return models.Count == 0
            ? $"{study.Tool.Name} {study.Tool.Version}; no model was used, every landmark was placed by a reader."
            : $"{study.Tool.Name} {study.Tool.Version}; proposals by {string.Join(", ", models)}. Intervals were calibrated on simulated films, and what they promise holds for those alone.";
    }
}
