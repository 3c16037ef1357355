using System.Globalization;
using System.Net;
using ElbowAssist.Batch.Queue;
using ElbowAssist.Cli.Films;
using ElbowAssist.Reading;

namespace ElbowAssist.Cli.Batches;

/// <summary>What <c>worker</c> was asked to do.</summary>
/// <param name="Queue">The servers.</param>
/// <param name="Model">Name of a model folder, or null for the default.</param>
/// <param name="Threads">Films read at the same time.</param>
/// <param name="FilmFolder">Folder of films that batches leave in place, or null.</param>
/// <param name="Monitor">Address and port for health and metrics, or null for none.</param>
internal sealed record WorkerRequest(QueueOptions Queue, string? Model, int Threads, string? FilmFolder, IPEndPoint? Monitor);

/// <summary>Reads films of a queue until stopped.</summary>
internal static class WorkerRun
{
    public static async Task<ExitCode> RunAsync(WorkerRequest request, CancellationToken stop)
    {
        using var models = ModelReading.Open(request.Model, films: int.MaxValue);
        var worker = new FilmWorker(request.Queue, new BatchReading(models), request.FilmFolder);
        await using var monitor = request.Monitor is { } address ? await WorkerMonitor.StartAsync(address, worker.State).ConfigureAwait(false) : null;
        Console.Out.WriteLine($"Working for {request.Queue.Servers}; stop with Ctrl-C, films in hand are finished first. {Caution.Text}");
        await worker.RunAsync(request.Threads, () => Console.Out.WriteLine("Waiting for a server and a batch for these models and this version."), stop).ConfigureAwait(false);
        Console.Out.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{worker.State.Read} films read, {worker.State.Known} known already, {worker.State.GivenBack} given back."));
        return ExitCode.Done;
    }
}
