using System.Diagnostics;
using System.Globalization;

namespace ElbowAssist.Cli.Benching;

/// <summary>How far a bench has come, on standard error: running on a terminal, else a line for each tenth.</summary>
internal sealed class BenchProgress : IDisposable
{
    private const int Lines = 10;
    private readonly bool running = !Console.IsErrorRedirected;
    private readonly long started = Stopwatch.GetTimestamp();
    private readonly int films;
    private readonly int before;
    private readonly Lock gate = new();
    private int done;

    public BenchProgress(int films, int before)
    {
        (this.films, this.before, done) = (films, before, before);
        if (before > 0 && before < films)
        {
            Console.Error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{before} of {films} films were done before; going on."));
        }
    }

    public void Step()
    {
        lock (gate)
        {
            done++;
            var line = Line();
            if (running)
            {
                Console.Error.Write($"\r{line}   ");
            }
            else if (done * Lines / films != (done - 1) * Lines / films)
            {
                Console.Error.WriteLine(line);
            }
        }
    }

    public void Dispose()
    {
        if (running && done > before)
        {
            Console.Error.WriteLine();
        }
    }

    private string Line()
    {
        var seconds = Stopwatch.GetElapsedTime(started).TotalSeconds;
        var rate = (done - before) / Math.Max(seconds, 1e-3);
        return string.Create(CultureInfo.InvariantCulture, $"{done} of {films} films, {rate:0.0} films/s, about {(films - done) / rate / 60:0} min left");
    }
}
