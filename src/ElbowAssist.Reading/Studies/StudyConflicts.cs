using ElbowAssist.Anatomy;

namespace ElbowAssist.Reading.Studies;

/// <summary>Contradictions between films and their papers.</summary>
internal static class StudyConflicts
{
    // An age in years and one in months of the same child differ by less than a year.
    private const int AgeToleranceMonths = 12;

    public static IEnumerable<StudyConflict> In(IReadOnlyList<StudyFilm> films)
    {
        foreach (var film in films.Where(f => f.SideIsContradicted))
        {
            var said = string.Join(", ", film.SideStatements.Where(s => s.Side != Side.Unknown)
                .Select(s => $"{s.Source} {(s.Side == Side.Left ? "left" : "right")}"));
            yield return new("side.contradicted",
                $"The side of {film.Id} is contradicted ({said}). The reader must settle it, as settledSides in the study file, before anything is exported.", [film.Id], StopsExport: true);
        }

        var sexes = films.Where(f => f.Reading.Patient.Sex is not null).ToList();
        if (sexes.DistinctBy(f => f.Reading.Patient.Sex).Count() > 1)
        {
            yield return new("patient.sex", "The films give different sexes: are they of one patient? Settle it before anything is exported.",
                [.. sexes.Select(f => f.Id)], StopsExport: true);
        }

        foreach (var occasion in films.Where(f => f.Reading.Patient.AgeMonths is not null).GroupBy(f => Occasion.Of(f.Context)))
        {
            var ages = occasion.Select(f => f.Reading.Patient.AgeMonths!.Value).ToList();
            if (ages.Max() - ages.Min() >= AgeToleranceMonths)
            {
                yield return new("patient.age", "Films of one occasion give ages a year or more apart: are they of one patient? Settle it before anything is exported.",
                    [.. occasion.Select(f => f.Id)], StopsExport: true);
            }
        }

        foreach (var twice in films.Where(f => f.Reading.Image.Sha256.Length > 0).GroupBy(f => f.Reading.Image.Sha256).Where(g => g.Count() > 1))
        {
            yield return new("film.twice", $"{string.Join(" and ", twice.Select(f => f.Id))} are the same image.",
                [.. twice.Select(f => f.Id)], StopsExport: false);
        }
    }
}
