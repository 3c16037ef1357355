using ElbowAssist.Bench.Calibrating;
using ElbowAssist.Exchange.Json;
using ElbowAssist.Pipeline.Calibration;
using ElbowAssist.Pipeline.Judging;
using ElbowAssist.Reading;

namespace ElbowAssist.Bench.Scoring;

/// <summary>Films with truth files in one folder, and readings of them in another.</summary>
public static class LabelledSet
{
    private const string TruthSuffix = ".truth.json";
    private const string ReadingSuffix = ".reading.json";

    /// <summary>Every film that has a truth file, with its reading.</summary>
    /// <param name="films">Folder with <c>*.truth.json</c>.</param>
    /// <param name="readings">Folder with <c>&lt;film file name&gt;.reading.json</c>.</param>
    /// <returns>Films in the order of the file names, and the files of films without a reading.</returns>
    /// <exception cref="DirectoryNotFoundException">A folder does not exist.</exception>
    /// <exception cref="Exchange.ExchangeFormatException">A file is not what its name says.</exception>
    public static (IReadOnlyList<ReadFilm> Films, IReadOnlyList<string> Missing) Load(string films, string readings)
    {
        List<ReadFilm> read = [];
        List<string> missing = [];
        foreach (var path in Directory.EnumerateFiles(films, "*" + TruthSuffix).Order(StringComparer.Ordinal))
        {
            var truth = TruthJson.Read(File.ReadAllBytes(path));
            var reading = Path.Combine(readings, truth.Image.File + ReadingSuffix);
            if (File.Exists(reading))
            {
                read.Add(new ReadFilm(truth, ReadingJson.Read(File.ReadAllBytes(reading))));
            }
            else
            {
                missing.Add(truth.Image.File);
            }
        }

        return (read, missing);
    }

    /// <summary>Films with the readings that follow from their proposals.</summary>
    /// <param name="films">Films.</param>
    /// <param name="judge">Applies the limits.</param>
    /// <param name="calibrations">Calibration by the hash of the landmark model that proposed; uncalibrated where one is missing.</param>
    public static IReadOnlyList<ReadFilm> Judged(
        IEnumerable<CalibrationFilm> films, FilmJudge judge, IReadOnlyDictionary<string, ModelCalibration> calibrations)
    {
        ArgumentNullException.ThrowIfNull(films);
        return
        [
            .. films.AsParallel().AsOrdered().Select(f => new ReadFilm(f.Truth, judge.Judge(
                f.Proposed.Image,
                f.Proposed.Options,
                f.Proposed.Proposals,
                calibrations.GetValueOrDefault(f.Proposed.Proposals.Landmarks?.Model.Sha256 ?? "", ModelCalibration.None)))),
        ];
    }
}

/// <summary>A film's truth and its reading.</summary>
/// <param name="Truth">Truth.</param>
/// <param name="Reading">Reading.</param>
public sealed record ReadFilm(TruthFile Truth, FilmReading Reading)
{
    /// <summary>The errors of the reading.</summary>
    public FilmScore Score { get; } = FilmScorer.Score(Truth, Reading);
}
