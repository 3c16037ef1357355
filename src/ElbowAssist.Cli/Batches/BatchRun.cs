using System.Globalization;
using ElbowAssist.Batch;
using ElbowAssist.Batch.Films;
using ElbowAssist.Batch.Queue;
using ElbowAssist.Batch.Results;
using ElbowAssist.Batch.Running;
using ElbowAssist.Cli.Films;
using ElbowAssist.Exchange.Json.Facts;
using ElbowAssist.Reading;

namespace ElbowAssist.Cli.Batches;

/// <summary>Reads many films into one file of results, in this process or by workers.</summary>
internal static class BatchRun
{
    public static async Task<ExitCode> RunAsync(BatchRequest request, CancellationToken stop)
    {
        using var http = new HttpClient();
        var source = BatchSources.Of(request, http);
        // Networks are loaded where films are read.
        using var models = request.Queue is null ? ModelReading.Open(request.Model, films: int.MaxValue) : null;
        var recipe = BatchReading.RecipeOf(models?.Sha256 ?? ModelReading.Sha256Of(request.Model));
        var clock = TimeProvider.System;
        try
        {
            using var results = ResultsFile.Open(request.Output, recipe);
            var pace = new Pace(clock);
            using var end = CancellationTokenSource.CreateLinkedTokenSource(stop);
            var showing = new PaceLine(pace, clock).ShowAsync(end.Token);
            var counting = CountAsync(source, pace, end.Token);
            try
            {
                var stated = SidecarJson.Write(request.Options);
                var outcome = await (request.Queue is { } queue
                    ? new QueueRun(queue, recipe, clock).RunAsync(source, stated, results, pace, stop)
                    : LocalRun.RunAsync(source, stated, new BatchReading(models!), results, pace, request.Threads, stop)).ConfigureAwait(false);
                return Report(outcome, results);
            }
            finally
            {
                await end.CancelAsync().ConfigureAwait(false);
                await Task.WhenAll(showing, counting).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            }
        }
        catch (BatchException e)
        {
            throw new UserErrorException(e.Message);
        }
    }

    private static async Task CountAsync(IFilmSource source, Pace pace, CancellationToken cancellation)
    {
        var films = 0;
        await foreach (var film in source.ListAsync(cancellation).ConfigureAwait(false))
        {
            films++;
        }

        pace.Counted(films);
    }

    private static ExitCode Report(BatchOutcome outcome, ResultsFile results)
    {
        Complain(outcome.NotOpened, "could not be opened and have no result; check that they are there, may be read and have at most 256 MiB");
        Complain(outcome.Changed, "became another file while the batch ran and have no result; run the same command again to read them");
        Complain(outcome.GivenUp, "could not be read for a reason inside the program or its workers and have no result");
        Console.Out.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{outcome.Films} films, {outcome.Now} results now, {outcome.Before} before; in the file {results.CountOf(FilmEnd.Read)} readings, {results.CountOf(FilmEnd.Refused)} refusals, {results.CountOf(FilmEnd.Unreadable)} that cannot be decoded."));
        Console.Out.WriteLine(Caution.Text);
        if (outcome.Stopped)
        {
            Console.Error.WriteLine("Stopped; run the same command again to go on.");
        }

        var worst = results.CountOf(FilmEnd.Refused) > 0 ? ExitCode.Refused : ExitCode.Done;
        worst = results.CountOf(FilmEnd.Unreadable) > 0 || outcome.NotOpened.Count > 0 ? worst.Worse(ExitCode.Unreadable) : worst;
        return outcome.Stopped || outcome.Changed.Count > 0 || outcome.GivenUp.Count > 0 ? ExitCode.Failed : worst;
    }

    // Only numbers: names of films may tell whose they are.
    private static void Complain(IReadOnlyList<string> films, string what)
    {
        if (films.Count > 0)
        {
            Console.Error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{films.Count} films {what}."));
        }
    }
}
