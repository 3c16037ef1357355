using System.Globalization;
using ElbowAssist.Bench.Comparing;
using ElbowAssist.Bench.Datasets;
using ElbowAssist.Geometry;

namespace ElbowAssist.Bench.Reports;

/// <summary>A film to be looked at, and why.</summary>
public sealed class FilmChoice
{
    private const int MostRefused = 2;
    private readonly ScoredFilm scored;
    private readonly string title;

    private FilmChoice(ScoredFilm scored, string title) => (this.scored, this.title) = (scored, title);

    /// <summary>The film.</summary>
    public LabelledFilm Film => scored.Film;

    internal static IReadOnlyList<FilmChoice> Of(Contest contest) => [.. contest.Panels.SelectMany(Of)];

    /// <summary>The figure of the film. A refused film shows the reference alone, as nothing of it was given.</summary>
    /// <param name="jpeg">The film as a JPEG file.</param>
    public FilmFigure Figure(byte[] jpeg)
    {
        var reference = Film.Truth.Landmarks.Where(l => l.Position is not null).ToDictionary(l => l.Name, l => l.Position!.Value, StringComparer.Ordinal);
        var refused = scored.Score.Refused;
        var reasons = string.Join(", ", scored.Score.Reasons);
        return new FilmFigure(
            $"{title}: {Film.File}",
            refused ? $"Refused: {reasons}." : string.Create(CultureInfo.InvariantCulture, $"Mean radial error {scored.MeanRadial:0.00} {scored.Score.LengthUnit}.{(reasons.Length > 0 ? $" Reasons given: {reasons}." : "")}"),
            Film.Truth.Image.Width,
            Film.Truth.Image.Height,
            jpeg,
            [.. reference.Values],
            refused ? [] : [.. scored.Answer.Reading.Landmarks.Where(l => l.Position is not null).Select(l => (l.Position!.Value, reference.TryGetValue(l.Name, out var r) ? r : (Point?)null))]);
    }

    private static IEnumerable<FilmChoice> Of(Panel panel)
    {
        var laid = panel.Films.Where(f => f.MeanRadial is not null && !f.Score.Refused).OrderBy(f => f.MeanRadial).ToList();
        if (laid.Count > 0)
        {
            yield return new FilmChoice(laid[^1], $"{panel.Entrant}, {panel.ViewWord}, worst");
        }

        if (laid.Count > 1)
        {
            yield return new FilmChoice(laid[(laid.Count - 1) / 2], $"{panel.Entrant}, {panel.ViewWord}, median");
        }

        foreach (var refused in panel.Films.Where(f => f.Score.Refused).Take(MostRefused))
        {
            yield return new FilmChoice(refused, $"{panel.Entrant}, {panel.ViewWord}, refused");
        }
    }
}
