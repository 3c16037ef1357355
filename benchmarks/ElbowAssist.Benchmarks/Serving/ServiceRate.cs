using System.Diagnostics;
using System.Globalization;
using ElbowAssist.Anatomy;
using ElbowAssist.Exchange.Json;
using ElbowAssist.Imaging.Files;
using ElbowAssist.Models;
using ElbowAssist.Models.Inference;
using ElbowAssist.Pipeline;
using ElbowAssist.Reading;
using ElbowAssist.Reading.Assembly;
using ElbowAssist.Testing;

namespace ElbowAssist.Benchmarks.Serving;

/// <summary>
/// How many films a second the service reads for many clients, against reading the same films within one process on as
/// many threads: <c>service [CLIENTS] [SECONDS]</c>, 32 and 60 if not said. In-process, service, in-process again, so that a
/// machine that others use at the same time shows.
/// </summary>
internal static class ServiceRate
{
    private static readonly string[] Films = ["adult-film/lateral.png", "adult-two-views/left-lateral.png", "child-two-views/left-lateral.jpg"];

    public static async Task RunAsync(IReadOnlyList<string> arguments)
    {
        var clients = arguments.Count > 0 ? int.Parse(arguments[0], CultureInfo.InvariantCulture) : 32;
        var time = TimeSpan.FromSeconds(arguments.Count > 1 ? int.Parse(arguments[1], CultureInfo.InvariantCulture) : 60);
        byte[][] films = [.. Films.Select(f => File.ReadAllBytes(Path.Combine(Repository.Root, "src", "ElbowAssist.Cli", "Demo", f)))];
        using var folder = new TemporaryFolder();
        Console.WriteLine(FormattableString.Invariant($"{clients} clients for {time.TotalSeconds:0} s on {Environment.ProcessorCount} processors"));
        var before = InProcess(films, time / 3);
        Console.WriteLine(FormattableString.Invariant($"within one process: {before:0.00} films a second"));
        using var service = Start(folder.File("studies.db"), out var address);
        try
        {
            _ = await ManyClients.SendAsync(address, films, Environment.ProcessorCount, time / 6, service).ConfigureAwait(false);
            var met = await ManyClients.SendAsync(address, films, clients, time, service).ConfigureAwait(false);
            Console.WriteLine($"the service: {ManyClients.Told(met)}");
            service.Kill();
            var after = InProcess(films, time / 3);
            Console.WriteLine(FormattableString.Invariant($"within one process again: {after:0.00} films a second"));
            Console.WriteLine(FormattableString.Invariant($"the service reads {met.FilmsPerSecond / ((before + after) / 2):P0} of that (at least 90 % wanted)"));
        }
        finally
        {
            service.Kill(entireProcessTree: true);
        }
    }

    private static double InProcess(byte[][] films, TimeSpan time)
    {
        using var models = ModelSet.Load(Path.Combine(Repository.Root, "models"), null, ModelThreads.Batch);
        var reader = new FilmReader(models, new ToolIdentity("benchmarks", "0"));
        void One(int i)
        {
            var film = FilmFile.Decode(films[i % films.Length], "film.png");
            _ = ReadingJson.Write(ReadingAssembler.Default.Assemble(reader.Prepare(film, new ReadOptions { View = View.Lateral })));
        }

        var (next, done) = (0, 0);
        void Work(TimeSpan until)
        {
            var watch = Stopwatch.StartNew();
            Parallel.For(0, Environment.ProcessorCount, _ =>
            {
                while (watch.Elapsed < until)
                {
                    One(Interlocked.Increment(ref next));
                    Interlocked.Increment(ref done);
                }
            });
        }

        Work(time / 4);
        done = 0;
        var began = Stopwatch.GetTimestamp();
        Work(time);
        return done / Stopwatch.GetElapsedTime(began).TotalSeconds;
    }

    private static Process Start(string store, out Uri address)
    {
        const string Before = "The reading page is at ";
        var program = Path.Combine(Repository.Root, ".artifacts", "bin", "ElbowAssist.Cli", "release_linux-x64", "elbowassist.dll");
        var service = Process.Start(new ProcessStartInfo("dotnet", [program, "serve", "--port", "0", "--store", store]) { RedirectStandardOutput = true, UseShellExecute = false })!;
        var line = service.StandardOutput.ReadLine() ?? "";
        address = line.StartsWith(Before, StringComparison.Ordinal) ? new Uri(line[Before.Length..]) : throw new InvalidOperationException($"The program said: {line}");
        return service;
    }
}
