using ElbowAssist.Bench.Calibrating;
using ElbowAssist.Bench.Scoring;
using ElbowAssist.Reading.Limits;
using ElbowAssist.Reading.Reasons;

namespace ElbowAssist.Bench.Tables;

/// <summary>Well-taken films that are turned away, and why.</summary>
internal static class AdequacyTable
{
    public static Table Of(IReadOnlyList<ReadFilm> films) => new(
        "adequacy",
        "well-taken films (view error at most 8 degrees, no fault): refused, or every value withheld by a check of the film (at most 5 %)",
        ["view", "group", "films", "refused", "turnedAway", "share", "failedChecks"],
        [.. PromiseTables.ByView(films).SelectMany(v => PromiseTables.Groups(v.Films.FindAll(f => Adequate.Holds(f.Truth.Simulated))).Select(g => Row(v.View, g.Name, g.Films)))]);

    private static IReadOnlyList<object> Row(string view, string group, List<ReadFilm> films)
    {
        var refused = films.Count(f => f.Reading.Adequacy.Refused);
        var turned = films.Count(f => f.Reading.Adequacy.Refused || FailedEverywhere(f).Any());
        var failed = films.SelectMany(f => FailedEverywhere(f).Concat(f.Reading.Adequacy.Refused ? Failed(f) : []).Distinct(StringComparer.Ordinal))
            .CountBy(c => c, StringComparer.Ordinal).OrderByDescending(c => c.Value).Select(c => FormattableString.Invariant($"{c.Key} {c.Value}"));
        return [view, group, films.Count, refused, turned, PromiseTables.Share(turned, films.Count), string.Join("; ", failed)];
    }

    private static IEnumerable<string> Failed(ReadFilm film) => film.Reading.Adequacy.Checks.Where(c => !c.Passed).Select(c => c.Name);

    /// <summary>Checks that leave no alignment value of the film: a rotated film, an unlikely shape, an unknown picture.</summary>
    private static IEnumerable<string> FailedEverywhere(ReadFilm film) => film.Reading.Adequacy.Checks
        .Where(c => !c.Passed && c.Reason is FilmReasons.FilmRotated or FilmReasons.ShapeImplausible or FilmReasons.UnlikeTraining or FilmReasons.ResolutionLow)
        .Where(c => !c.Passed).Select(c => c.Name);
}
