using System.Globalization;
using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Rules;

namespace ElbowAssist.Reading.Studies;

/// <summary>The prompts of all films, of the reader's marks and of the side differences in one list.</summary>
internal static class StudyPrompts
{
    public static IReadOnlyList<StudyPrompt> Of(
        IReadOnlyList<StudyFilm> films, Patient patient, Maturity stated, ReaderMarks marks, IReadOnlyList<SideDifference> differences)
    {
        var fromMarks = ElbowRules.Evaluate(new()
        {
            Patient = patient,
            StatedMaturity = stated,
            View = View.Unknown,
            Marks = marks,
        }).Select(p => (Prompt: p, FilmId: (string?)null));
        var fromFilms = films.SelectMany(f => ElbowRules.Evaluate(RuleBridge.ToRuleInput(
                f.View, f.Reading.Patient with { AgeMonths = f.Reading.Patient.AgeMonths ?? patient.AgeMonths, Sex = f.Reading.Patient.Sex ?? patient.Sex },
                f.Context, f.Reading.Measurements, new() { Effusion = marks.Effusion, Trauma = marks.Trauma }, stated))
            .Where(p => !p.Code.StartsWith("effusion.", StringComparison.Ordinal) || p.Code == "effusion.anterior-angle")
            .Select(p => (Prompt: p, FilmId: (string?)f.Id)));
        return
        [
            .. fromMarks.Concat(fromFilms).Concat(differences.SelectMany(FromDifference))
                .GroupBy(p => p.Prompt.Code, StringComparer.Ordinal)
                .Select(g => new StudyPrompt(
                    g.Key, g.First().Prompt.Text, g.First().Prompt.Source, g.Min(p => p.Prompt.Urgency), [.. g.Select(p => p.FilmId).OfType<string>().Distinct()]))
                .OrderBy(p => p.Urgency),
        ];
    }

    private static IEnumerable<(RulePrompt Prompt, string? FilmId)> FromDifference(SideDifference d)
    {
        if (d is not { Name: "baumann-angle", State: DifferenceState.BeyondLimit })
        {
            return [];
        }

        var text = string.Create(CultureInfo.InvariantCulture,
            $"The Baumann angle differs by {d.Value:+0.0;-0.0}° between the sides (redraw interval {d.Redraw95.Low:0.0} to {d.Redraw95.High:0.0}°), beyond the limit of {d.Limit:0}°; larger means more varus. Trace the medial and lateral column again.");
        var source = Publication.Join([Publications.ThisProject, Publications.Shank]);
        var prompt = new RulePrompt("baumann-angle.side-difference", text, source, Urgency.Strong);
        return [(prompt, d.FirstFilmId), (prompt, d.SecondFilmId)];
    }
}
