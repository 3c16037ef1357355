using ElbowAssist.Bench.Comparing;
using ElbowAssist.Bench.Datasets;
using ElbowAssist.Bench.Reports;
using ElbowAssist.Cli.Films;
using ElbowAssist.Exchange;
using ElbowAssist.Imaging;
using ElbowAssist.Imaging.Files;
using ElbowAssist.Imaging.Normalisation;
using ElbowAssist.Reading;

namespace ElbowAssist.Cli.Benching;

/// <summary>
/// Scores models and predictions on a labelled set and writes the report. A run that was ended at any moment goes on where
/// it was when the same command is given again.
/// </summary>
internal static class ContestRun
{
    private const string Answers = "answers";
    private const int PictureSide = 640;

    public static ExitCode Run(ContestRequest request, CancellationToken cancellation)
    {
        var models = request.Models.Select(OpenModels.Open).ToList();
        try
        {
            var dataset = Dataset(request);
            var facts = RunIdentity.Of(request, dataset, models);
            RunIdentity.Claim(request.OutputFolder, facts, cancellation);
            var stores = models.ConvertAll(m => (Models: m, Store: StoreOf(request.OutputFolder, m)));
            stores.ForEach(s => s.Store.Tidy());
            var cost = new AnswerRun(stores, request.StateView, Environment.ProcessorCount).Run(dataset.Films, cancellation);
            IReadOnlyList<Entrant> entrants = [.. stores.Select(s => EntrantOf(s.Models, s.Store, dataset)), .. request.Predictions.Select(p => PredictedLandmarks.Read(p, dataset))];
            Distinct(entrants);
            var report = new BenchReport(dataset, entrants, facts);
            var figures = report.Choices.Select(c => c.Figure(Picture(c.Film.Path))).ToList();
            OutputFiles.Write(request.OutputFolder, report.Files(TimingTables.Of(entrants, cost), figures), cancellation);
            foreach (var table in report.Headlines)
            {
                Console.Out.Write(table.ToText());
            }

            var unread = stores.SelectMany(s => dataset.Films.Select(s.Store.WhyUnread)).OfType<string>().Distinct(StringComparer.Ordinal).ToList();
            unread.ForEach(Console.Error.WriteLine);
            Console.Out.WriteLine($"Report: {Path.Combine(request.OutputFolder, BenchReport.PageFile)}");
            Console.Out.WriteLine(Caution.Text);
            return unread.Count > 0 ? ExitCode.Unreadable : ExitCode.Done;
        }
        catch (Exception e) when (e is ExchangeFormatException or FormatException or UnreadableFilmException)
        {
            throw new UserErrorException(e.Message, ExitCode.Unreadable);
        }
        catch (AggregateException e) when (e.InnerException is ExchangeFormatException or FormatException or UserErrorException)
        {
            throw new UserErrorException(e.InnerException.Message, ExitCode.Unreadable);
        }
        finally
        {
            models.ForEach(m => m.Dispose());
        }
    }

    /// <summary>Where the answers of models are kept.</summary>
    public static AnswerStore StoreOf(string outputFolder, OpenModels models) => new(Path.Combine(outputFolder, Answers, models.Name));

    private static FilmDataset Dataset(ContestRequest request)
    {
        try
        {
            var dataset = FilmDataset.Open(request.Dataset, DicomFiles.SpacingOf);
            return request.Readers.Aggregate(dataset, (set, readers) => ReaderPlacements.Add(set, readers));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new UserErrorException($"The data set {request.Dataset} cannot be opened; give a folder of films with truth files or coco.json, or a COCO file.");
        }
    }

    private static Entrant EntrantOf(OpenModels models, AnswerStore store, FilmDataset dataset) => new(
        models.Name,
        models.Views,
        dataset.Films.AsParallel().AsOrdered().Select(f => (f.File, Answer: store.Answer(f))).Where(f => f.Answer is not null)
            .ToDictionary(f => f.File, f => f.Answer!, StringComparer.Ordinal));

    private static void Distinct(IReadOnlyList<Entrant> entrants)
    {
        if (entrants.GroupBy(e => e.Name, StringComparer.Ordinal).FirstOrDefault(g => g.Count() > 1) is { } twice)
        {
            throw new UserErrorException($"Two entrants are named {twice.Key}; rename a folder or a file.");
        }
    }

    private static byte[] Picture(string path)
    {
        using var radiograph = DicomFiles.ReadIfDicom(path)?.Radiograph ?? FilmFile.Read(path, reuse: true);
        using var normalised = NormalisedFilm.Of(radiograph);
        return DisplayImage.Of(normalised, PictureSide).ToJpeg();
    }
}
