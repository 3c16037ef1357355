using System.Diagnostics;
using System.Globalization;
using System.Runtime.InteropServices;
using ElbowAssist.Bench.Datasets;
using ElbowAssist.Cli.Benching;

namespace ElbowAssist.Benchmarks.Benching;

/// <summary>
/// What <c>bench</c> reaches of the films a second that decoding plus ONNX Runtime alone would: both on the same films and
/// threads, in turns of a few films, so that a machine that others use disturbs both alike.
/// <c>floor DATASET THREADS OUT [MODEL…]</c>; what the bench says is kept in OUT as <c>bench --out</c> keeps it, and
/// films answered there before are not measured.
/// </summary>
internal static class BenchFloor
{
    private const int FilmsOfATurn = 10;

    /// <summary>Turns, at most, that warm the runtime up and do not count: long runs are measured, not starts.</summary>
    private const int MostWarmUps = 3;

    public static void Run(string dataset, int threads, string folder, IReadOnlyList<string> named)
    {
        var models = named.DefaultIfEmpty(OpenModels.Installed).Select(OpenModels.Open).ToList();
        var stores = models.ConvertAll(m => (Models: m, Store: ContestRun.StoreOf(folder, m)));
        var films = FilmDataset.Open(dataset).Films.Where(f => stores.Exists(s => !s.Store.Has(f))).ToList();
        if (films.Count == 0)
        {
            Console.WriteLine("Every film has been answered in this folder; name another.");
            return;
        }

        using var bare = new BareRun(stores, threads, films[0]);
        var bench = new AnswerRun(stores, stateView: false, threads);
        var (ours, floor) = (new Cost(), new Cost());
        var progress = Console.Error;
        Console.SetError(TextWriter.Null);
        var warmUps = Math.Min(MostWarmUps, films.Count / FilmsOfATurn / 4);
        foreach (var (number, turn) in films.Chunk(FilmsOfATurn).Index())
        {
            Array.ForEach(turn, f => _ = File.ReadAllBytes(f.Path).Length);
            var counts = number >= warmUps;
            ours.Add(turn.Length, () => bench.Run(turn, CancellationToken.None), counts);
            var runs = Array.ConvertAll(turn, f => (f, bare.RunsOf(f)));
            floor.Add(turn.Length, () => bare.Run(runs), counts);
            progress.WriteLine(FormattableString.Invariant($"{ours.Films} films, bench / floor {ours.Ratio(floor)}"));
        }

        Console.SetError(progress);
        Console.WriteLine(FormattableString.Invariant($"{ours.Films} films, {models.Count} entrants, {threads} threads of {Environment.ProcessorCount}, {RuntimeInformation.FrameworkDescription}, {DateTime.UtcNow:yyyy-MM-dd}"));
        Console.WriteLine($"bench: {ours}");
        Console.WriteLine($"decode and ONNX Runtime alone: {floor}");
        Console.WriteLine($"bench / floor in films a second (at least 0.9 wanted): {ours.Ratio(floor)}");
        var started = Stopwatch.GetTimestamp();
        ContestRun.Run(new ContestRequest(dataset, [.. named.DefaultIfEmpty(OpenModels.Installed)], [], [], false, folder), CancellationToken.None);
        Console.WriteLine(FormattableString.Invariant($"Tables and report took {Stopwatch.GetElapsedTime(started).TotalSeconds:0.0} s once more."));
        models.ForEach(m => m.Dispose());
    }

    /// <summary>Time on the clock and of all processors, over films.</summary>
    private sealed class Cost
    {
        private TimeSpan clock;
        private TimeSpan processor;

        public int Films { get; private set; }

        public void Add(int films, Action work, bool counts)
        {
            var (began, used) = (Stopwatch.GetTimestamp(), Environment.CpuUsage.TotalTime);
            work();
            if (counts)
            {
                (Films, clock, processor) = (Films + films, clock + Stopwatch.GetElapsedTime(began), processor + Environment.CpuUsage.TotalTime - used);
            }
        }

        public string Ratio(Cost floor) => string.Create(CultureInfo.InvariantCulture, $"{floor.clock / clock:0.000} by the clock, {floor.processor / processor:0.000} by processor time");

        public override string ToString() => string.Create(
            CultureInfo.InvariantCulture, $"{Films / clock.TotalSeconds:0.00} films/s, {processor.TotalMilliseconds / Films:0.0} ms of processor time a film");
    }
}
