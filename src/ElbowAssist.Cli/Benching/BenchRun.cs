using System.Text;
using System.Text.Json;
using ElbowAssist.Anatomy.Measurements;
using ElbowAssist.Bench.Calibrating;
using ElbowAssist.Bench.Reports;
using ElbowAssist.Bench.Scoring;
using ElbowAssist.Bench.Tables;
using ElbowAssist.Cli.Films;
using ElbowAssist.Exchange;
using ElbowAssist.Exchange.Json;
using ElbowAssist.Models.Folders;
using ElbowAssist.Pipeline.Calibration;
using ElbowAssist.Pipeline.Judging;

namespace ElbowAssist.Cli.Benching;

/// <summary>Scores a labelled set and prints its figures.</summary>
internal static class BenchRun
{
    public static ExitCode Run(BenchRequest request)
    {
        if (request.Needed.FirstOrDefault(folder => !folder.Exists) is { } absent)
        {
            throw new UserErrorException($"{absent} is no folder; give the folder of the films and that of their readings or proposals.");
        }

        try
        {
            if (request.ScoresElbows)
            {
                Score(request, request.Films!);
            }

            if (request.NotElbows is { } none)
            {
                ScoreOthers(none, request.ScoresElbows ? null : request.Films, request.Tables);
            }

            return ExitCode.Done;
        }
        catch (Exception e) when (e is ExchangeFormatException or FormatException)
        {
            throw new UserErrorException(e.Message, ExitCode.Unreadable);
        }
    }

    private static void Score(BenchRequest request, DirectoryInfo folder)
    {
        var (films, missing) = request.Readings is { } readings ? LabelledSet.Load(folder.FullName, readings.FullName) : Judged(folder, request.Proposals!);
        if (films.Count == 0)
        {
            throw new UserErrorException($"No film in {folder} has both a truth file and a reading in {request.Readings ?? request.Proposals}; read the films first.");
        }

        Console.Out.Write(ScoreText.Of([.. films.Select(f => f.Score)]));
        if (request.Tables is { } tables)
        {
            Write(tables, PromiseTables.Of(films));
        }

        Console.Out.WriteLine($"{films.Count} films scored, {missing.Count} without a reading.");
    }

    /// <summary>Counts what became of pictures without an elbow, and names those that were measured.</summary>
    private static void ScoreOthers(DirectoryInfo folder, DirectoryInfo? pictureFolder, DirectoryInfo? tables)
    {
        var pictures = OtherPictures.Load(folder.FullName, pictureFolder?.FullName, Judge(), Calibrations());
        if (pictures.Count == 0)
        {
            throw new UserErrorException($"{folder} holds no readings of pictures without an elbow; read the pictures first.");
        }

        Table[] counted = [OtherPictureTable.Of(pictures)];
        if (tables is { } output)
        {
            Write(output, counted);
        }
        else
        {
            Console.Out.Write(counted[0].ToText());
        }

        foreach (var picture in pictures.Where(p => p.IsMeasured))
        {
            Console.Out.WriteLine($"measured: {picture.Reading.Image.File}, {Vocabularies.View.WordOf(picture.Reading.View.Name)}, {picture.Reading.Measurements.Count(m => m.Value is not null)} values");
        }

        var taken = pictures.Count(p => !p.Reading.Adequacy.Refused);
        Console.Out.WriteLine(FormattableString.Invariant(
            $"{pictures.Count} pictures without an elbow: {pictures.Count - taken} refused, {taken} taken for an elbow, {pictures.Count(p => p.IsMeasured)} measured."));
    }

    private static void Write(DirectoryInfo folder, IReadOnlyList<Table> tables)
    {
        OutputFiles.Write(folder.FullName, [.. tables.SelectMany(Files)], CancellationToken.None);
        Console.Out.Write(string.Concat(tables.Where(t => t.Rows.Count <= 400).Select(t => t.ToText())));
    }

    /// <summary>Readings made of proposals under the limits and calibrations in use.</summary>
    private static (IReadOnlyList<ReadFilm> Films, IReadOnlyList<string> Missing) Judged(DirectoryInfo films, DirectoryInfo proposals) =>
        (LabelledSet.Judged(CalibrationFilm.Load([films.FullName], proposals.FullName), Judge(), Calibrations()), []);

    private static FilmJudge Judge() => new(ThisTool.Identity, LimitsFile.Read(), RedrawOptions.Default);

    private static Dictionary<string, ModelCalibration> Calibrations() => CalibrationsInUse()
        .DistinctBy(c => c.Sha256, StringComparer.Ordinal).ToDictionary(c => c.Sha256, c => c.Calibration, StringComparer.Ordinal);

    private static IEnumerable<(string Sha256, ModelCalibration Calibration)> CalibrationsInUse()
    {
        try
        {
            return [.. ModelFolder.Find(ModelsFolder.Path).Select(ModelFolder.Open).Where(f => f.Manifest.Task == "landmarks")
                .Select(f => (f.Manifest.Onnx.Sha256, ModelCalibration.Of(f.Manifest)))];
        }
        catch (ModelFolderException e)
        {
            throw new UserErrorException(e.Message);
        }
    }

    private static IEnumerable<(string Name, byte[] Content)> Files(Table table)
    {
        yield return (table.Name + ".csv", Encoding.UTF8.GetBytes(table.ToCsv()));
        yield return (table.Name + ".json", JsonSerializer.SerializeToUtf8Bytes(new
        {
            table.Name,
            table.Title,
            Rows = table.Rows.Select(row => table.Columns.Zip(row.Select(cell => cell is double.NaN ? null : cell)).ToDictionary(c => c.First, c => c.Second)),
        }));
    }
}
