using ElbowAssist.Anatomy.Measurements;
using ElbowAssist.Bench.Comparing;
using ElbowAssist.Bench.Datasets;
using ElbowAssist.Exchange;
using ElbowAssist.Exchange.Json.Coco;
using ElbowAssist.Reading;
using ElbowAssist.Reading.Assembly;

namespace ElbowAssist.Cli.Benching;

/// <summary>Landmarks that another program laid on the films of a set, as an entrant of the bench.</summary>
internal static class PredictedLandmarks
{
    /// <summary>Reads a file of predictions; measurements are laid through them under the limits in use.</summary>
    /// <exception cref="ExchangeFormatException">The file cannot be used.</exception>
    public static Entrant Read(string path, FilmDataset dataset)
    {
        var films = dataset.Films.ToDictionary(f => f.File, StringComparer.Ordinal);
        var assembler = new ReadingAssembler(LimitsFile.Read(), RedrawOptions.Default);
        var answers = new Dictionary<string, FilmAnswer>(StringComparer.Ordinal);
        var laid = CocoSetReader.ReadPlacements(File.ReadAllBytes(path), dataset.Coco);
        foreach (var prediction in laid)
        {
            if (!films.TryGetValue(prediction.Image.File, out var film))
            {
                throw new ExchangeFormatException($"{Path.GetFileName(path)} is about {prediction.Image.File}, which the data set does not hold.");
            }

            if (!answers.TryAdd(film.File, Answer(assembler, film, prediction)))
            {
                throw new ExchangeFormatException($"{Path.GetFileName(path)} holds two sets of landmarks for {film.File}.");
            }
        }

        return new Entrant(Path.GetFileNameWithoutExtension(path), [.. laid.Select(l => l.View).Distinct().Order()], answers);
    }

    private static FilmAnswer Answer(ReadingAssembler assembler, LabelledFilm film, CocoAnnotation prediction)
    {
        var reading = assembler.Assemble(new ReadingInput
        {
            Tool = ThisTool.Identity,
            Image = film.Truth.Image,
            View = new ViewFinding(prediction.View, new Dictionary<string, double>(StringComparer.Ordinal), null),
            Side = film.Truth.Side,
            Patient = film.Truth.Patient,
            Context = film.Truth.Context,
            Landmarks = prediction.Landmarks,
        });
        return new FilmAnswer(
            reading with { Timing = new Dictionary<string, double>(StringComparer.Ordinal) },
            prediction.View == film.Truth.View.Name ? prediction.Landmarks : []);
    }
}
