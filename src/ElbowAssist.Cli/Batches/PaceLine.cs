using System.Globalization;
using ElbowAssist.Batch.Running;

namespace ElbowAssist.Cli.Batches;

/// <summary>Shows on standard error how far a batch is: on a terminal in one line each second, else a line each half minute.</summary>
internal sealed class PaceLine(Pace pace, TimeProvider clock)
{
    private static readonly TimeSpan OnTerminal = TimeSpan.FromSeconds(1);
    private static readonly TimeSpan InLog = TimeSpan.FromSeconds(30);

    /// <summary>Shows it until cancelled.</summary>
    public async Task ShowAsync(CancellationToken cancellation)
    {
        var terminal = !Console.IsErrorRedirected;
        try
        {
            while (true)
            {
                await Task.Delay(terminal ? OnTerminal : InLog, clock, cancellation).ConfigureAwait(false);
                var line = Of(pace.Now());
                await (terminal ? Console.Error.WriteAsync($"\r{line,-70}") : Console.Error.WriteLineAsync(line)).ConfigureAwait(false);
            }
        }
        catch (OperationCanceledException)
        {
            if (terminal)
            {
                await Console.Error.WriteLineAsync().ConfigureAwait(false);
            }
        }
    }

    /// <summary>E.g. <c>120 of 5000 films, 20.3 a second, 4 min left</c>.</summary>
    internal static string Of(BatchProgress progress)
    {
        var films = progress.Films is { } all ? string.Create(CultureInfo.InvariantCulture, $"{progress.Done} of {all} films") : string.Create(CultureInfo.InvariantCulture, $"{progress.Done} films");
        var rate = progress.PerSecond is { } perSecond ? string.Create(CultureInfo.InvariantCulture, $", {perSecond:0.0} a second") : "";
        return films + rate + (progress.Left is { } left ? $", {Time(left)} left" : "");
    }

    private static string Time(TimeSpan left) => left switch
    {
        { TotalSeconds: < 100 } => string.Create(CultureInfo.InvariantCulture, $"{Math.Ceiling(left.TotalSeconds)} s"),
        { TotalMinutes: < 100 } => string.Create(CultureInfo.InvariantCulture, $"{Math.Ceiling(left.TotalMinutes)} min"),
        _ => string.Create(CultureInfo.InvariantCulture, $"{Math.Ceiling(left.TotalHours)} h"),
    };
}
