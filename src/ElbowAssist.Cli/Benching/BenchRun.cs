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
            var (films, missing) = request.Readings is { } readings ? LabelledSet.Load(request.Films.FullName, readings.FullName) : Judged(request);
            if (films.Count == 0)
            {
                throw new UserErrorException($"No film in {request.Films} has both a truth file and a reading in {request.Readings ?? request.Proposals}; read the films first.");
            }

            Console.Out.Write(ScoreText.Of([.. films.Select(f => f.Score)]));
            if (request.Tables is { } folder)
            {
                var tables = PromiseTables.Of(films);
                OutputFiles.Write(folder.FullName, [.. tables.SelectMany(Files)], CancellationToken.None);
                Console.Out.Write(string.Concat(tables.Where(t => t.Rows.Count <= 400).Select(t => t.ToText())));
            }

            if (request.NotElbows is { } none)
            {
                Console.Out.WriteLine(NotElbows(none));
            }

            Console.Out.WriteLine($"{films.Count} films scored, {missing.Count} without a reading.");
            return ExitCode.Done;
        }
        catch (Exception e) when (e is ExchangeFormatException or FormatException)
        {
            throw new UserErrorException(e.Message, ExitCode.Unreadable);
        }
    }

    /// <summary>Readings made of proposals under the limits and calibrations in use.</summary>
    private static (IReadOnlyList<ReadFilm> Films, IReadOnlyList<string> Missing) Judged(BenchRequest request)
    {
        var calibrations = CalibrationsInUse().DistinctBy(c => c.Sha256, StringComparer.Ordinal)
            .ToDictionary(c => c.Sha256, c => c.Calibration, StringComparer.Ordinal);
        var films = CalibrationFilm.Load([request.Films.FullName], request.Proposals!.FullName);
        var judge = new FilmJudge(ThisTool.Identity, LimitsFile.Read(), RedrawOptions.Default);
        return (LabelledSet.Judged(films, judge, calibrations), []);
    }

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

    private static string NotElbows(DirectoryInfo folder)
    {
        var readings = folder.EnumerateFiles("*" + OutputNames.Reading).OrderBy(f => f.Name, StringComparer.Ordinal)
            .Select(f => ReadingJson.Read(File.ReadAllBytes(f.FullName))).ToList();
        var taken = readings.FindAll(r => !r.Adequacy.Refused);
        return FormattableString.Invariant($"{readings.Count} pictures without an elbow: {readings.Count - taken.Count} refused, {taken.Count} taken for an elbow{string.Concat(taken.Take(20).Select(r => $"; {r.Image.File}"))}.");
    }
}
