using ElbowAssist.Exchange.Json;

namespace ElbowAssist.Bench.Scoring;

/// <summary>Films with truth files in one folder, and readings of them in another.</summary>
public static class LabelledSet
{
    private const string TruthSuffix = ".truth.json";
    private const string ReadingSuffix = ".reading.json";

    /// <summary>Scores every film that has a truth file.</summary>
    /// <param name="films">Folder with <c>*.truth.json</c>.</param>
    /// <param name="readings">Folder with <c>&lt;film file name&gt;.reading.json</c>.</param>
    /// <returns>Scores in the order of the file names, and the films without a reading.</returns>
    /// <exception cref="DirectoryNotFoundException">A folder does not exist.</exception>
    /// <exception cref="Exchange.ExchangeFormatException">A file is not what its name says.</exception>
    public static (IReadOnlyList<FilmScore> Scores, IReadOnlyList<string> Missing) Score(string films, string readings)
    {
        List<FilmScore> scores = [];
        List<string> missing = [];
        foreach (var path in Directory.EnumerateFiles(films, "*" + TruthSuffix).Order(StringComparer.Ordinal))
        {
            var truth = TruthJson.Read(File.ReadAllBytes(path));
            var reading = Path.Combine(readings, truth.Image.File + ReadingSuffix);
            if (File.Exists(reading))
            {
                scores.Add(FilmScorer.Score(truth, ReadingJson.Read(File.ReadAllBytes(reading))));
            }
            else
            {
                missing.Add(truth.Image.File);
            }
        }

        return (scores, missing);
    }
}
