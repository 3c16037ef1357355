using System.CommandLine;
using ElbowAssist.Cli.Batches;

namespace ElbowAssist.Cli.Commands;

/// <summary><c>worker</c>: reads films that batches submit.</summary>
internal static class WorkerCommand
{
    public static Command Create()
    {
        var server = QueueOptionSet.Server();
        server.Required = true;
        var credentials = QueueOptionSet.Credentials();
        var model = new Option<string?>("--model") { Description = "Model folder to use in place of the default.", HelpName = "NAME" };
        var threads = QueueOptionSet.Threads();
        var films = new Option<string?>("--films") { Description = "Folder of the films that batches leave in place.", HelpName = "DIR" };
        var monitor = QueueOptionSet.Monitor("Port, or address and port, for /health and /metrics; a port alone listens on this machine only.");
        var command = new Command("worker", "Read films that batches submit to a NATS server, until stopped.") { server, credentials, model, threads, films, monitor };
        command.SetAction(async (parsed, cancellation) => (int)await WorkerRun.RunAsync(
            new WorkerRequest(
                QueueOptionSet.Of(parsed, server, credentials)!,
                parsed.GetValue(model),
                parsed.GetValue(threads),
                parsed.GetValue(films),
                parsed.GetValue(monitor)),
            cancellation).ConfigureAwait(false));
        return command;
    }
}
