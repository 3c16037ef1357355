using ElbowAssist.Bench.Calibrating;
using ElbowAssist.Bench.Datasets;

namespace ElbowAssist.Bench.Comparing;

/// <summary>The groups of films that are reported apart: age bands, injured or not, each injury, each site.</summary>
internal static class Strata
{
    public const string All = "all";

    /// <summary>Groups that hold a film, <see cref="All"/> first.</summary>
    public static IReadOnlyList<(string Name, Func<LabelledFilm, bool> Includes)> Of(IReadOnlyList<LabelledFilm> films) =>
        [.. Every(films).Where(g => films.Any(g.Includes))];

    private static IEnumerable<(string Name, Func<LabelledFilm, bool> Includes)> Every(IReadOnlyList<LabelledFilm> films)
    {
        yield return (All, _ => true);
        foreach (var (name, from, to) in AgeBands.All)
        {
            yield return (name == "adult" ? name : "age " + name, f => Age(f) is { } age && age >= from && !(age >= to));
        }

        yield return ("uninjured", f => f.Injuries is { Count: 0 });
        yield return ("injured", f => f.Injuries is { Count: > 0 });
        foreach (var injury in films.SelectMany(f => f.Injuries ?? []).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal))
        {
            yield return (injury, f => f.Injuries is { } injuries && injuries.Contains(injury, StringComparer.Ordinal));
        }

        foreach (var site in films.Select(f => f.Site).Where(s => s.Length > 0).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal))
        {
            yield return ("site " + site, f => f.Site == site);
        }
    }

    private static int? Age(LabelledFilm film) => film.Truth.Patient.AgeMonths ?? film.Truth.Simulated?.AgeMonths;
}
