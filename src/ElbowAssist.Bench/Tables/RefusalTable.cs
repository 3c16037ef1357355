using ElbowAssist.Bench.Scoring;

namespace ElbowAssist.Bench.Tables;

/// <summary>Refused films and given reasons by class, so that refusing the injured is seen.</summary>
internal static class RefusalTable
{
    public static Table Of(IReadOnlyList<ReadFilm> films) => new(
        "refusals",
        "films refused, values withheld although the film has them, and the most frequent reasons",
        ["view", "group", "films", "refused", "refusedShare", "values", "withheld", "withheldShare", "reasons"],
        [.. PromiseTables.ByView(films).SelectMany(v => PromiseTables.Groups(v.Films).Select(g => Row(v.View, g.Name, g.Films)))]);

    private static IReadOnlyList<object> Row(string view, string group, List<ReadFilm> films)
    {
        var refused = films.Count(f => f.Reading.Adequacy.Refused);
        var values = films.Sum(f => f.Truth.Measurements.Count(m => m.Value is not null));
        var withheld = films.Sum(f => f.Truth.Measurements.Count(m => m.Value is not null && f.Reading.Measurements.All(r => r.Name != m.Name || r.Value is null)));
        var reasons = films.SelectMany(f => f.Reading.Reasons.Select(r => r.Code).Distinct(StringComparer.Ordinal)).CountBy(r => r, StringComparer.Ordinal)
            .OrderByDescending(r => r.Value).ThenBy(r => r.Key, StringComparer.Ordinal).Take(10).Select(r => FormattableString.Invariant($"{r.Key} {r.Value}"));
        return
        [
            view, group, films.Count, refused, PromiseTables.Share(refused, films.Count), values, withheld, PromiseTables.Share(withheld, values), string.Join("; ", reasons),
        ];
    }
}
