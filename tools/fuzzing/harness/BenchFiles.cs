using System.Text;
using ElbowAssist.Bench.Datasets;
using ElbowAssist.Cli;
using ElbowAssist.Cli.Benching;
using ElbowAssist.Cli.Films;
using ElbowAssist.Exchange;
using ElbowAssist.Exchange.Json;
using ElbowAssist.Pipeline.Proposals;
using ElbowAssist.Reading;
using ElbowAssist.Testing;

namespace ElbowAssist.Fuzzing;

/// <summary>Files that a bench takes in: predictions and readers of someone else, and what a run before left.</summary>
internal static class BenchFiles
{
    /// <summary>The labelled set that they are about.</summary>
    public static readonly byte[] Labels = Encoding.UTF8.GetBytes("""{"images": [{"id": 1, "file_name": "film", "width": 100, "height": 120}], "categories": [{"id": 1, "name": "elbow", "keypoints": ["humerus.fossa.roof", "humerus.waist"]}], "annotations": [{"id": 1, "image_id": 1, "category_id": 1, "keypoints": [10, 20, 2, 30, 40, 1]}]}""");

    private static readonly Lazy<FilmDataset> Set = new(() =>
    {
        Scratch.Write("set/film", "pixels"u8.ToArray());
        return FilmDataset.Open(Scratch.Write("set/coco.json", Labels));
    });

    /// <summary>Landmarks that another program laid.</summary>
    public static void Predictions(byte[] file) => Targets.Said<ExchangeFormatException>(() => PredictedLandmarks.Read(Scratch.Write("predictions", file), Set.Value));

    /// <summary>Readers, as COCO or as a store of studies.</summary>
    public static void Readers(byte[] file) => Targets.Said<ExchangeFormatException>(() => ReaderPlacements.Add(Set.Value, Scratch.Write("readers", file)));

    /// <summary>What a run before rests on.</summary>
    public static void Identity(byte[] file) => Targets.Said<UserErrorException>(() =>
    {
        RunIdentity.Claim(Path.GetDirectoryName(Scratch.Write("bench/run.json", file))!, [("program", "x")], default);
        return null;
    });

    /// <summary>What a network said of a film in a run before.</summary>
    public static void Answer(byte[] file) => Targets.Said<FormatException>(() =>
    {
        Scratch.Write("answers/film" + ProposedFilm.FileSuffix, file);
        Scratch.Write("answers/film" + OutputNames.Reading, ReadingJson.Write(SampleReadings.Lateral()));
        return new AnswerStore(Path.Combine(Scratch.Folder, "answers")).Answer(Set.Value.Films[0]);
    });
}
