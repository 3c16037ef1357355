using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Bench.Datasets;
using ElbowAssist.Exchange.Json;

namespace ElbowAssist.Bench.Comparing;

/// <summary>Entrants on one data set, scored film by film.</summary>
internal sealed class Contest
{
    public Contest(FilmDataset dataset, IReadOnlyList<Entrant> entrants)
    {
        (Dataset, Entrants) = (dataset, entrants);
        Scored = entrants.ToDictionary(
            e => e.Name,
            e => (IReadOnlyList<ScoredFilm>)[.. dataset.Films.AsParallel().AsOrdered()
                .Where(f => e.Views.Contains(f.Truth.View.Name))
                .Select(f => new ScoredFilm(f, e.Answers.GetValueOrDefault(f.File) ?? FilmAnswer.None(f)))],
            StringComparer.Ordinal);
    }

    public FilmDataset Dataset { get; }

    public IReadOnlyList<Entrant> Entrants { get; }

    /// <summary>Films of the views an entrant serves, by its name; what it did not answer counts as nothing laid.</summary>
    public IReadOnlyDictionary<string, IReadOnlyList<ScoredFilm>> Scored { get; }

    /// <summary>Films of one view with one unit of length, for every entrant that serves the view.</summary>
    public IEnumerable<Panel> Panels => Entrants.SelectMany(e => Scored[e.Name]
        .Where(f => LandmarkSet.Of(f.Film.Truth.View.Name) is not null)
        .GroupBy(f => (f.Film.Truth.View.Name, f.Score.LengthUnit)).OrderBy(g => g.Key.Name).ThenBy(g => g.Key.LengthUnit, StringComparer.Ordinal)
        .Select(g => new Panel(e.Name, g.Key.Name, g.Key.LengthUnit, [.. g])));
}

/// <summary>Films of one view and unit as one entrant answered them.</summary>
internal sealed record Panel(string Entrant, View View, string Unit, List<ScoredFilm> Films)
{
    public string ViewWord => Vocabularies.View.WordOf(View);

    /// <summary>All films, age bands, injuries and sites that hold any.</summary>
    public IEnumerable<(string Name, List<ScoredFilm> Films)> Groups =>
        Strata.Of(Films.ConvertAll(f => f.Film)).Select(s => (s.Name, Films.FindAll(f => s.Includes(f.Film))));
}
