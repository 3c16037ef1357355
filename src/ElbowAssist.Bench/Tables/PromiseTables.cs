using ElbowAssist.Bench.Scoring;

namespace ElbowAssist.Bench.Tables;

/// <summary>Every table that says how far spread and refusal keep what they promise, for each view apart.</summary>
public static class PromiseTables
{
    /// <summary>The tables of a labelled set.</summary>
    public static IReadOnlyList<Table> Of(IReadOnlyList<ReadFilm> films)
    {
        ArgumentNullException.ThrowIfNull(films);
        return
        [
            CoverageTable.Of(films),
            ZoneTable.Of(films),
            StateTable.OfClasses(films),
            StateTable.OfPromises(films),
            RefusalTable.Of(films),
            AdequacyTable.Of(films),
            DefectTable.Of(films),
            RiskTable.Of(films),
        ];
    }

    /// <summary>Films of each view that readings can be made of, with the name of the view.</summary>
    internal static IEnumerable<(string View, List<ReadFilm> Films)> ByView(IReadOnlyList<ReadFilm> films) => films
        .GroupBy(f => f.Truth.View.Name)
        .OrderBy(g => g.Key)
        .Select(g => (Exchange.Json.Vocabularies.View.WordOf(g.Key), g.ToList()));

    /// <summary>All films, the age bands, uninjured and injured films and every injury.</summary>
    internal static IEnumerable<(string Name, List<ReadFilm> Films)> Groups(List<ReadFilm> films)
    {
        foreach (var group in FilmGroup.Standard(films.Select(f => f.Score)))
        {
            var members = films.FindAll(f => group.Includes(f.Score));
            if (members.Count > 0)
            {
                yield return (group.Name, members);
            }
        }
    }

    /// <summary>A share, NaN of nothing.</summary>
    internal static double Share(int part, int whole) => whole == 0 ? double.NaN : (double)part / whole;
}
