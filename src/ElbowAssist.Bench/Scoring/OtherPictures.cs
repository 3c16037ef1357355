using ElbowAssist.Exchange.Json;
using ElbowAssist.Pipeline.Calibration;
using ElbowAssist.Pipeline.Judging;
using ElbowAssist.Pipeline.Proposals;
using ElbowAssist.Reading;

namespace ElbowAssist.Bench.Scoring;

/// <summary>A picture without an elbow with its reading.</summary>
/// <param name="Shows">What it shows; <c>unlabelled</c> where no truth file says so.</param>
/// <param name="Version"><c>as-taken</c>, or what was done to the picture; empty where no truth file says so.</param>
/// <param name="Reading">Reading.</param>
public sealed record OtherPictureReading(string Shows, string Version, FilmReading Reading)
{
    /// <summary>Whether any measurement has a value.</summary>
    public bool IsMeasured => Reading.Measurements.Any(m => m.Value is not null);
}

/// <summary>Readings of pictures that show no elbow.</summary>
public static class OtherPictures
{
    private const string Unlabelled = "unlabelled";
    private const string ReadingSuffix = ".reading.json";
    private const string TruthSuffix = ".truth.json";

    /// <summary>
    /// Every reading of a folder, or what follows from every file of proposals that has no reading beside it. Truth files in the
    /// same folder or in that of the pictures say what is shown; a picture whose truth is an elbow is left out.
    /// </summary>
    /// <param name="folder">Folder with <c>*.reading.json</c> or <c>*.proposals.json</c>.</param>
    /// <param name="pictures">Folder of the pictures where truth files may lie, or null.</param>
    /// <param name="judge">Applies the limits to proposals.</param>
    /// <param name="calibrations">Calibration by the hash of the landmark model that proposed.</param>
    /// <exception cref="FormatException">A file of proposals is not what its name says.</exception>
    /// <exception cref="Exchange.ExchangeFormatException">A reading or truth is not what its name says.</exception>
    public static IReadOnlyList<OtherPictureReading> Load(
        string folder, string? pictures, FilmJudge judge, IReadOnlyDictionary<string, ModelCalibration> calibrations)
    {
        ArgumentNullException.ThrowIfNull(judge);
        ArgumentNullException.ThrowIfNull(calibrations);
        var truths = new[] { folder, pictures }.OfType<string>().Distinct(StringComparer.Ordinal).SelectMany(f => Directory.EnumerateFiles(f, "*" + TruthSuffix))
            .Select(path => TruthJson.Read(File.ReadAllBytes(path))).DistinctBy(t => t.Image.File, StringComparer.Ordinal)
            .ToDictionary(t => t.Image.File, t => t, StringComparer.Ordinal);
        return
        [
            .. Films(folder).AsParallel().AsOrdered()
                .Where(film => truths.GetValueOrDefault(film) is not { NotElbow: null })
                .Select(film => Of(truths.GetValueOrDefault(film), Reading(Path.Combine(folder, film), judge, calibrations))),
        ];
    }

    private static IEnumerable<string> Films(string folder) => new[] { ReadingSuffix, ProposedFilm.FileSuffix }
        .SelectMany(suffix => Directory.EnumerateFiles(folder, "*" + suffix).Select(path => Path.GetFileName(path)[..^suffix.Length]))
        .Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal);

    private static OtherPictureReading Of(TruthFile? truth, FilmReading reading) =>
        new(truth?.NotElbow?.Shows ?? Unlabelled, truth?.NotElbow?.Version ?? "", reading);

    private static FilmReading Reading(string film, FilmJudge judge, IReadOnlyDictionary<string, ModelCalibration> calibrations)
    {
        if (File.Exists(film + ReadingSuffix))
        {
            return ReadingJson.Read(File.ReadAllBytes(film + ReadingSuffix));
        }

        var proposed = ProposedFilmJson.Read(File.ReadAllBytes(film + ProposedFilm.FileSuffix));
        return judge.Judge(
            proposed.Image,
            proposed.Options,
            proposed.Proposals,
            calibrations.GetValueOrDefault(proposed.Proposals.Landmarks?.Model.Sha256 ?? "", ModelCalibration.None));
    }
}
