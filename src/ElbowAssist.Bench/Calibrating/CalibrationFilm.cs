using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Anatomy.Measurements;
using ElbowAssist.Exchange.Json;
using ElbowAssist.Exchange.Json.Coco;
using ElbowAssist.Pipeline.Proposals;
using ElbowAssist.Reading;

namespace ElbowAssist.Bench.Calibrating;

/// <summary>A labelled film with what a model proposed on it.</summary>
/// <param name="Truth">What is true of the film.</param>
/// <param name="Proposed">What was proposed.</param>
public sealed record CalibrationFilm(TruthFile Truth, ProposedFilm Proposed)
{
    /// <summary>True values by measurement name: the constructions applied to the true landmarks.</summary>
    public IReadOnlyDictionary<string, double> Values { get; } = ValuesOf(Truth);

    /// <summary>Whether the film is well taken: a true view within 8°, and no fault of exposure or field.</summary>
    public bool IsAdequate => Adequate.Holds(Truth.Simulated);

    /// <summary>
    /// Films of folders that have both a label and proposals. Labels are <c>*.truth.json</c> beside the films or, without
    /// any, COCO keypoints in <c>coco.json</c>.
    /// </summary>
    /// <param name="films">Folders with labels.</param>
    /// <param name="proposals">Folder with <c>&lt;film file name&gt;.proposals.json</c>.</param>
    /// <exception cref="FormatException">A file of proposals is not what its name says.</exception>
    /// <exception cref="Exchange.ExchangeFormatException">A label is not what its name says.</exception>
    public static IReadOnlyList<CalibrationFilm> Load(IEnumerable<string> films, string proposals) =>
    [
        .. films.SelectMany(Labels).AsParallel().AsOrdered()
            .Select(label => label())
            .SelectMany(truths => truths)
            .Select(truth => (Truth: truth, Path: Path.Combine(proposals, truth.Image.File + ProposedFilm.FileSuffix)))
            .Where(film => File.Exists(film.Path))
            .Select(film => new CalibrationFilm(film.Truth, ProposedFilmJson.Read(File.ReadAllBytes(film.Path)))),
    ];

    private static IEnumerable<Func<IReadOnlyList<TruthFile>>> Labels(string folder)
    {
        var truths = Directory.EnumerateFiles(folder, "*.truth.json").Order(StringComparer.Ordinal).ToList();
        var coco = Path.Combine(folder, "coco.json");
        return truths.Count == 0 && File.Exists(coco)
            ? [() => [.. CocoKeypoints.Read(File.ReadAllBytes(coco)).Select(OfCoco)]]
            : truths.Select(path => (Func<IReadOnlyList<TruthFile>>)(() => [TruthJson.Read(File.ReadAllBytes(path))]));
    }

    private static TruthFile OfCoco(CocoFilm film) => new()
    {
        Image = new ImageFacts(film.File, film.Width, film.Height, null, null, "none", ""),
        View = new ViewFinding(film.View, new Dictionary<string, double>(StringComparer.Ordinal), null),
        Side = Side.Unknown,
        Patient = Patient.Unknown,
        Context = FilmContext.Unknown,
        Landmarks = [.. film.Landmarks.Select(l => new TrueLandmark(l.Name, l.Kind, l.Position, null, l.Visibility))],
    };

    private static IReadOnlyDictionary<string, double> ValuesOf(TruthFile truth)
    {
        if (truth.Measurements.Count > 0 || LandmarkSet.Of(truth.View.Name) is not { } set)
        {
            return truth.Measurements.Where(m => m.Value is not null).ToDictionary(m => m.Name, m => m.Value!.Value, StringComparer.Ordinal);
        }

        var byName = truth.Landmarks.ToDictionary(l => l.Name, l => l.Position, StringComparer.Ordinal);
        return FilmMeasuring.Exact(LaidLandmarks.Exact(
            set,
            [.. set.Landmarks.Select(l => byName.GetValueOrDefault(l.Name))],
            FilmScale.Of(truth.Image.RowSpacingMm, truth.Image.ColumnSpacingMm)));
    }
}
