using System.CommandLine;
using ElbowAssist.Cli.Commands;

namespace ElbowAssist.Cli;

internal static class Program
{
    private static async Task<int> Main(string[] args)
    {
        try
        {
            var parsed = Root.Create().Parse(args);
            if (parsed.Errors.Count > 0 && parsed.Action is not System.CommandLine.Help.HelpAction)
            {
                await Console.Error.WriteLineAsync($"{parsed.Errors[0].Message} See: elbowassist {CommandPath(parsed)}--help").ConfigureAwait(false);
                return (int)ExitCode.Failed;
            }

            return await parsed.InvokeAsync(new InvocationConfiguration
            {
                EnableDefaultExceptionHandler = false,
                // A worker finishes the films in hand. Who stops it may wait less: what is not finished goes to another worker.
                ProcessTerminationTimeout = TimeSpan.FromMinutes(1),
            }).ConfigureAwait(false);
        }
        catch (OperationCanceledException)
        {
            await Console.Error.WriteLineAsync("Stopped; films already finished keep their outputs.").ConfigureAwait(false);
            return (int)ExitCode.Failed;
        }
        catch (Exception e) when (Told(e) is not null)
        {
            var told = Told(e)!;
            await Console.Error.WriteLineAsync(told.Message).ConfigureAwait(false);
            return (int)told.Code;
        }
        catch (Exception e) when (e is not OutOfMemoryException)
        {
            await Console.Error.WriteLineAsync(Unexpected(e)).ConfigureAwait(false);
            return (int)ExitCode.Failed;
        }
    }

    /// <summary>A bug in one sentence: what kind, and where to look, but no stack trace.</summary>
    internal static string Unexpected(Exception e) =>
        $"Something went wrong inside the program ({e.GetType().Name}: {e.Message.ReplaceLineEndings(" ")}); please report it with the command you ran.";

    // Work side by side wraps what went wrong in it.
    private static UserErrorException? Told(Exception e) =>
        e as UserErrorException ?? (e as AggregateException)?.Flatten().InnerExceptions.OfType<UserErrorException>().FirstOrDefault();

    private static string CommandPath(ParseResult parsed)
    {
        var command = parsed.CommandResult.Command;
        return command is RootCommand ? "" : $"{command.Name} ";
    }
}
