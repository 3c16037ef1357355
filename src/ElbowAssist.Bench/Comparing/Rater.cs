using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Anatomy.Measurements;
using ElbowAssist.Bench.Datasets;
using ElbowAssist.Geometry;
using ElbowAssist.Reading;

namespace ElbowAssist.Bench.Comparing;

/// <summary>Somebody who laid landmarks: the reference, a reader, the mean of some readers, or an entrant.</summary>
/// <param name="Name">Name in the report.</param>
/// <param name="Role">Reference, reader or entrant.</param>
/// <param name="Films">What was laid, by the file name of the film.</param>
internal sealed record Rater(string Name, RaterRole Role, IReadOnlyDictionary<string, RatedFilm> Films)
{
    /// <summary>The reader's own word, which a reader has in both conditions; empty for others.</summary>
    public string Reader { get; init; } = "";

    /// <summary>The reference of the set.</summary>
    public static Rater Reference(FilmDataset dataset) => new("reference", RaterRole.Reference, dataset.Films
        .Where(f => LandmarkSet.Of(f.Truth.View.Name) is not null)
        .ToDictionary(f => f.File, f => RatedFilm.Of(f, f.Truth.Landmarks), StringComparer.Ordinal));

    /// <summary>An entrant: landmarks before any limit, measurements as given.</summary>
    public static Rater Of(string entrant, IReadOnlyList<ScoredFilm> films) => new(entrant, RaterRole.Entrant, films
        .Where(f => LandmarkSet.Of(f.Film.Truth.View.Name) is not null)
        .ToDictionary(
            f => f.Film.File,
            f => new RatedFilm(
                f.Answer.Proposed.Where(l => l.Position is not null).ToDictionary(l => l.Name, l => l.Position!.Value, StringComparer.Ordinal),
                f.Answer.Reading.Measurements.Where(m => m.Value is not null).ToDictionary(m => m.Name, m => m.Value!.Value, StringComparer.Ordinal))
            {
                Lines = f.Answer.Reading.Lines,
            },
            StringComparer.Ordinal));

    /// <summary>Every reader of placements, those made with proposals on view apart.</summary>
    public static IReadOnlyList<Rater> Readers(IEnumerable<(LabelledFilm Film, Placement Placement)> placements) =>
        [.. placements.GroupBy(p => (p.Placement.Reader, p.Placement.WithProposals)).OrderBy(g => g.Key.Reader, StringComparer.Ordinal).ThenBy(g => g.Key.WithProposals)
            .Select(g => new Rater(Named(g.Key.Reader, g.Key.WithProposals), g.Key.WithProposals ? RaterRole.ReaderWithProposals : RaterRole.Reader, g
                .ToDictionary(p => p.Film.File, p => RatedFilm.Of(p.Film, p.Placement.Landmarks) with { Drawn = p.Placement.Lines }, StringComparer.Ordinal))
            {
                Reader = g.Key.Reader,
            })];

    /// <summary>The mean of every reader but one, so that a reader is not held against his own share of the mean.</summary>
    public static Rater MeanOfOthers(FilmDataset dataset, string reader) => new("mean of the other readers", RaterRole.Reference, dataset.Films
        .Select(f => (Film: f, Others: f.Placements.Where(p => !p.WithProposals && p.Reader != reader && p.Landmarks.Count > 0).ToList()))
        .Where(f => f.Others.Count > 1)
        .ToDictionary(f => f.Film.File, f => RatedFilm.OfPlaces(f.Film, ReferenceOf.Mean(LandmarkSet.Of(f.Film.Truth.View.Name)!, f.Others)), StringComparer.Ordinal));

    private static string Named(string reader, bool withProposals) =>
        (reader.Length == 0 ? "reader" : reader) + (withProposals ? ", with proposals" : "");
}

internal enum RaterRole
{
    Reference,
    Reader,
    ReaderWithProposals,
    Entrant,
}

/// <summary>What a rater laid on a film.</summary>
/// <param name="Places">Landmarks in film pixels.</param>
/// <param name="Values">Measurements by name.</param>
internal sealed record RatedFilm(IReadOnlyDictionary<string, Point> Places, IReadOnlyDictionary<string, double> Values)
{
    /// <summary>Lines of the measurements, under the measurements' names, film pixels.</summary>
    public IReadOnlyList<NamedLine> Lines { get; init; } = [];

    /// <summary>Lines drawn by hand, film pixels.</summary>
    public IReadOnlyList<NamedLine> Drawn { get; init; } = [];

    /// <summary>The line of a name: the one drawn by hand, else the first that serves a measurement of that name.</summary>
    public Line? LineOf(string name) =>
        (Drawn.FirstOrDefault(l => l.Name == name) ?? Lines.FirstOrDefault(l => l.Name.StartsWith(name + ".", StringComparison.Ordinal))) is { } line
            ? new Line(line.Point, line.Direction)
            : null;

    public static RatedFilm Of(LabelledFilm film, IReadOnlyList<Exchange.Json.TrueLandmark> landmarks)
    {
        var byName = landmarks.ToDictionary(l => l.Name, l => l.Position, StringComparer.Ordinal);
        return OfPlaces(film, [.. LandmarkSet.Of(film.Truth.View.Name)!.Landmarks.Select(l => byName.GetValueOrDefault(l.Name))]);
    }

    public static RatedFilm OfPlaces(LabelledFilm film, IReadOnlyList<Point?> places)
    {
        var set = LandmarkSet.Of(film.Truth.View.Name)!;
        var scale = FilmScale.Of(film.Truth.Image.RowSpacingMm, film.Truth.Image.ColumnSpacingMm);
        var values = ReferenceOf.Values(set, places, scale).ToList();
        return new RatedFilm(
            set.Landmarks.Zip(places).Where(l => l.Second is not null).ToDictionary(l => l.First.Name, l => l.Second!.Value, StringComparer.Ordinal),
            values.ToDictionary(v => v.Definition.Name, v => v.Value!.Value, StringComparer.Ordinal))
        {
            Lines = [.. values.SelectMany(v => v.Lines.Select(l => new NamedLine(v.Definition.Name, l.Line.Point, l.Line.Direction)))],
        };
    }
}
