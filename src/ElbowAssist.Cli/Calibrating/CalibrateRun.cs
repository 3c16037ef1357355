using System.Globalization;
using System.Text;
using ElbowAssist.Anatomy;
using ElbowAssist.Bench.Calibrating;
using ElbowAssist.Cli.Films;
using ElbowAssist.Exchange;
using ElbowAssist.Exchange.Json;
using ElbowAssist.Exchange.Json.Facts;
using ElbowAssist.Models.Folders;
using ElbowAssist.Pipeline.Calibration;
using ElbowAssist.Pipeline.Proposals;
using ElbowAssist.Reading.Limits;

namespace ElbowAssist.Cli.Calibrating;

/// <summary>Calibrates the installed landmark models on labelled films and writes new manifests and limits.</summary>
internal static class CalibrateRun
{
    public static ExitCode Run(CalibrateRequest request, CancellationToken cancellation)
    {
        var models = Models(request.Model);
        try
        {
            ReadMissing(request, cancellation);
            var films = Load(request.Films, request.Proposals);
            var choosing = Load(request.LimitFilms, request.Proposals);
            var limits = LimitsFile.Read();
            var run = new CalibrationRun(ThisTool.Identity);
            var calibrated = new List<(ModelFolder Folder, View View, ModelCalibration? Likeness)>();
            foreach (var (folder, view) in models)
            {
                ModelCalibration? likeness = null;
                if (choosing.Count > 0)
                {
                    (likeness, limits) = run.ChooseLimits(By(folder, choosing), view, limits, Described(choosing, "to choose limits"));
                }

                calibrated.Add((folder, view, likeness));
            }

            OutputFiles.Write(
                request.OutputFolder,
                [("limits.json", Encoding.UTF8.GetBytes(limits.ToJson()))],
                cancellation);
            foreach (var (folder, view, likeness) in calibrated)
            {
                Calibrate(run, request, folder, view, limits, likeness, films, cancellation);
            }

            return ExitCode.Done;
        }
        catch (Exception e) when (e is ExchangeFormatException or FormatException)
        {
            throw new UserErrorException(e.Message, ExitCode.Unreadable);
        }
    }

    private static void Calibrate(
        CalibrationRun run,
        CalibrateRequest request,
        ModelFolder folder,
        View view,
        AdequacyLimits limits,
        ModelCalibration? likeness,
        IReadOnlyList<CalibrationFilm> films,
        CancellationToken cancellation)
    {
        var own = By(folder, films);
        if (own.Count == 0)
        {
            Console.Out.WriteLine($"{folder.Manifest.Name}: no labelled {Vocabularies.View.WordOf(view)} film, left as it is.");
            return;
        }

        var calibration = run.Fit(own, view, limits, likeness, request.Origin);
        var manifest = CalibratedManifest.Write(File.ReadAllBytes(Path.Combine(folder.Path, "model.json")), calibration);
        OutputFiles.Write(Path.Combine(request.OutputFolder, Path.GetFileName(folder.Path)), [("model.json", manifest)], cancellation);
        Console.Out.WriteLine(FormattableString.Invariant($"{folder.Manifest.Name}: calibrated on {calibration.Split.Accepted} of {calibration.Split.Films} films."));
        foreach (var factor in calibration.Intervals)
        {
            Console.Out.WriteLine(FormattableString.Invariant($"  {factor.Measurement}, {factor.FromMonths} to {factor.ToMonths?.ToString(CultureInfo.InvariantCulture) ?? "any"} months: intervals times {factor.Factor:F2} ({factor.Films} films)"));
        }

        foreach (var zone in calibration.Zones)
        {
            Console.Out.WriteLine(FormattableString.Invariant($"  {zone.Measurement}: zones at temperature {zone.Temperature:F1}, mix {zone.Mix:F3} ({zone.Films} films)"));
        }
    }

    /// <summary>Films on which this very model proposed.</summary>
    private static IReadOnlyList<CalibrationFilm> By(ModelFolder folder, IReadOnlyList<CalibrationFilm> films) =>
        [.. films.Where(f => f.Proposed.Proposals.Landmarks?.Model.Sha256 == folder.Manifest.Onnx.Sha256)];

    private static IReadOnlyList<CalibrationFilm> Load(IReadOnlyList<string> folders, string proposals) =>
        folders.Count == 0 ? [] : CalibrationFilm.Load(folders, proposals);

    private static string Described(IReadOnlyList<CalibrationFilm> films, string purpose)
    {
        var seeds = films.Select(f => f.Truth.Simulated?.Seed).OfType<ulong>().ToList();
        return seeds.Count == 0 ? $"labelled films {purpose}" : string.Create(CultureInfo.InvariantCulture, $"simulated films {purpose} (seeds {seeds.Min()} to {seeds.Max()})");
    }

    private static void ReadMissing(CalibrateRequest request, CancellationToken cancellation)
    {
        var missing = request.Films.Concat(request.LimitFilms).SelectMany(FilmList.FilmsOf)
            .Where(film => !File.Exists(Path.Combine(request.Proposals, Path.GetFileName(film) + ProposedFilm.FileSuffix))).ToList();
        if (missing.Count > 0)
        {
            ReadRun.Run(
                new ReadRequest(missing, request.Proposals, new FilmFacts("option"), request.Model, null, false, ReadOutput.Proposals), cancellation);
        }
    }

    private static List<(ModelFolder Folder, View View)> Models(string? name)
    {
        try
        {
            var folders = ModelFolder.Find(ModelsFolder.Path).Select(ModelFolder.Open)
                .Where(f => f.Manifest.Task == "landmarks" && (name is null || f.Manifest.Name == name || Path.GetFileName(f.Path) == name))
                .Select(f => (f, Vocabularies.View.TryParse(f.Manifest.Views[0], out var view) ? view : View.Unknown)).ToList();
            return folders.Count > 0 ? folders : throw new UserErrorException($"There is no landmark model{(name is null ? "" : $" named {name}")}; see: elbowassist models list");
        }
        catch (ModelFolderException e)
        {
            throw new UserErrorException(e.Message);
        }
    }
}
