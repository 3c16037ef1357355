using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Bench.Datasets;
using ElbowAssist.Bench.Scoring;
using ElbowAssist.Reading;

namespace ElbowAssist.Bench.Comparing;

/// <summary>A set of models, or a file of predictions made elsewhere, that is scored on a data set.</summary>
/// <param name="Name">Name in the report.</param>
/// <param name="Views">Views it lays landmarks on; films of other views do not count for it.</param>
/// <param name="Answers">What it says, by the file name of the film; a film it said nothing of is missing.</param>
public sealed record Entrant(string Name, IReadOnlyList<View> Views, IReadOnlyDictionary<string, FilmAnswer> Answers);

/// <summary>What an entrant says of a film.</summary>
/// <param name="Reading">The reading under the limits in use.</param>
/// <param name="Proposed">
/// Where it puts landmarks before any limit, calibration or refusal, in film pixels; landmark errors are taken from these, so
/// that nobody scores better by refusing more. Empty where it took the film for another view.
/// </param>
public sealed record FilmAnswer(FilmReading Reading, IReadOnlyList<Landmark> Proposed)
{
    /// <summary>Nothing said of a film: no view, no landmark, no value.</summary>
    internal static FilmAnswer None(LabelledFilm film) => new(
        new FilmReading
        {
            Tool = new ToolIdentity("", ""),
            Models = [],
            Image = film.Truth.Image,
            View = new ViewFinding(View.Unknown, new Dictionary<string, double>(StringComparer.Ordinal), null),
            Side = film.Truth.Side,
            Patient = film.Truth.Patient,
            Context = film.Truth.Context,
            Adequacy = new Adequacy(false, [], [], []),
            Landmarks = [],
            Lines = [],
            Circles = [],
            Measurements = [],
            Evidence = [],
            Prompts = [],
            Reasons = [],
            Timing = new Dictionary<string, double>(StringComparer.Ordinal),
        },
        []);
}

/// <summary>A film and what one entrant said of it.</summary>
internal sealed record ScoredFilm
{
    public ScoredFilm(LabelledFilm film, FilmAnswer answer)
    {
        (Film, Answer) = (film, answer);
        Score = FilmScorer.Score(film.Truth, answer.Reading);
        Landmarks = FilmScorer.Score(film.Truth, answer.Reading with { Landmarks = answer.Proposed }).Landmarks;
    }

    public LabelledFilm Film { get; }

    public FilmAnswer Answer { get; }

    /// <summary>Errors of the reading: what was withheld has none.</summary>
    public FilmScore Score { get; }

    /// <summary>Errors of the landmarks before any limit.</summary>
    public IReadOnlyList<LandmarkScore> Landmarks { get; }

    /// <summary>Mean radial error, or null if no landmark was laid.</summary>
    public double? MeanRadial => Landmarks.Any(l => l.Radial is not null) ? Landmarks.Where(l => l.Radial is not null).Average(l => l.Radial!.Value) : null;
}
