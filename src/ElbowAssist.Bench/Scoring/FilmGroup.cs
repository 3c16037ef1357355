namespace ElbowAssist.Bench.Scoring;

/// <summary>A named selection of films to report apart.</summary>
/// <param name="Name">Name in the report, e.g. <c>age 2-5 y</c>.</param>
/// <param name="Includes">Whether a film belongs to it.</param>
public sealed record FilmGroup(string Name, Func<FilmScore, bool> Includes)
{
    /// <summary>All films, the five age bands of growth, whole and injured bones, and each injury by name.</summary>
    public static IReadOnlyList<FilmGroup> Standard(IEnumerable<FilmScore> films) =>
    [
        new("all", _ => true),
        Age("age 0.5-2 y", 0, 24),
        Age("age 2-5 y", 24, 60),
        Age("age 5-10 y", 60, 120),
        Age("age 10-16 y", 120, 192),
        Age("adult", 192, int.MaxValue),
        new("no injury", f => f.Injuries.Count == 0),
        new("injured", f => f.Injuries.Count > 0),
        .. films.SelectMany(f => f.Injuries).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)
            .Select(injury => new FilmGroup(injury, f => f.Injuries.Contains(injury, StringComparer.Ordinal))),
    ];

    private static FilmGroup Age(string name, int fromMonths, int toMonths) =>
        new(name, f => f.AgeMonths >= fromMonths && f.AgeMonths < toMonths);
}
