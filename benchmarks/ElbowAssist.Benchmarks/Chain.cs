using System.Diagnostics;
using System.Globalization;
using System.Runtime.InteropServices;
using ElbowAssist.Anatomy;
using ElbowAssist.Bench.Statistics;
using ElbowAssist.Imaging;
using ElbowAssist.Imaging.Files;
using ElbowAssist.Imaging.Normalisation;
using ElbowAssist.Models;
using ElbowAssist.Pipeline;
using ElbowAssist.Reading;
using ElbowAssist.Testing;

namespace ElbowAssist.Benchmarks;

/// <summary>
/// The whole read against its floor, decode and bare inference of the same passes, and its stages, for sizes of film,
/// threads and passes: medians of interleaved runs, so that a busy machine disturbs all alike, by the clock and by processor
/// time.
/// </summary>
internal static class Chain
{
    private static readonly int[] Sides = [512, 1024, 2236];
    private static readonly ReadOptions Options = new() { Patient = new Patient(480, Sex.Female) };

    public static void Run(int rounds)
    {
        Console.WriteLine(FormattableString.Invariant($"{Environment.ProcessorCount} threads, {RuntimeInformation.FrameworkDescription}, {rounds} rounds, {DateTime.UtcNow:yyyy-MM-dd}"));
        Console.WriteLine("side  threads  passes  decode ms  inference ms  whole ms  whole / floor  of processor time  normalise  quality  crops  assemble  managed KiB");
        foreach (var side in Sides)
        {
            using var folder = new TemporaryFolder();
            var path = folder.Write("film.png", BenchmarkFilm.Png(side));
            foreach (var threads in new[] { 1, 2 })
            {
                Row(path, side, threads, PassPlan.Default, "9", rounds);
                Row(path, side, threads, PassPlan.Single, "2", rounds);
            }
        }
    }

    private static void Row(string path, int side, int threads, PassPlan passes, string name, int rounds)
    {
        using var models = ModelSet.Load(Path.Combine(Repository.Root, "models"), threads: threads);
        var reader = new FilmReader(models, new ToolIdentity("benchmarks", "0"), passes);
        var landmarks = models.LandmarksOf(View.Lateral)!;
        // One network a thread, each on one thread: the fastest way to run several passes.
        BareNetwork[] bareViews = [.. Enumerable.Range(0, threads).Select(_ => new BareNetwork(models.View.Folder))];
        BareNetwork[] bareLandmarks = [.. Enumerable.Range(0, threads).Select(_ => new BareNetwork(landmarks.Folder))];
        for (var i = 0; i < threads; i++)
        {
            Fill(path, bareViews[i].Input, bareLandmarks[i].Input);
        }

        List<double> decode = [], inference = [], whole = [], floorWork = [], wholeWork = [];
        var stages = new Dictionary<string, List<double>>(StringComparer.Ordinal);
        long managed = long.MaxValue;
        for (var round = -2; round < rounds; round++)
        {
            var idle = Environment.CpuUsage.TotalTime;
            var d = Time(() => { using var film = FilmFile.Read(path, reuse: true); });
            var i = Time(() =>
            {
                Bare(bareViews, passes.View.Count);
                Bare(bareLandmarks, passes.Landmarks.Count);
            });
            var between = Environment.CpuUsage.TotalTime;
            var before = GC.GetTotalAllocatedBytes(precise: true);
            FilmReading? reading = null;
            var w = Time(() => reading = reader.Read(path, Options));
            var after = Environment.CpuUsage.TotalTime;
            if (round < 0)
            {
                continue;
            }

            managed = Math.Min(managed, GC.GetTotalAllocatedBytes(precise: true) - before);
            decode.Add(d);
            inference.Add(i);
            whole.Add(w);
            floorWork.Add((between - idle).TotalMilliseconds);
            wholeWork.Add((after - between).TotalMilliseconds);
            foreach (var (stage, ms) in reading!.Timing)
            {
                (stages.TryGetValue(stage, out var list) ? list : stages[stage] = []).Add(ms);
            }
        }

        var (mediumDecode, bare, all) = (Quantile.Median(decode), Quantile.Median(inference), Quantile.Median(whole));
        double Stage(string stage) => stages.TryGetValue(stage, out var list) ? Quantile.Median(list) : 0;
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{side,4}  {threads,7}  {name,6}  {mediumDecode,9:F1}  {bare,12:F1}  {all,8:F1}  {all / (mediumDecode + bare),13:F3}  {Quantile.Median(wholeWork) / Quantile.Median(floorWork),17:F3}  {Stage("normalise"),9:F1}  {Stage("quality"),7:F1}  {Stage("view") + Stage("landmarks") - bare,5:F1}  {Stage("measurements"),8:F1}  {managed / 1024.0,11:F0}"));
        Array.ForEach([.. bareViews, .. bareLandmarks], n => n.Dispose());
    }

    private static void Bare(BareNetwork[] networks, int passes) => Parallel.For(
        0, networks.Length, new ParallelOptions { MaxDegreeOfParallelism = networks.Length }, thread =>
        {
            for (var pass = thread; pass < passes; pass += networks.Length)
            {
                networks[thread].Run();
            }
        });

    private static void Fill(string path, Span<float> view, Span<float> landmark)
    {
        using var film = FilmFile.Read(path);
        using var normalised = NormalisedFilm.Of(film);
        normalised.StandardisedCrop(normalised.WholeFilmTo(256), 256, 256, view);
        normalised.StandardisedCrop(normalised.WholeFilmTo(256), 256, 256, landmark);
    }

    private static double Time(Action work)
    {
        var started = Stopwatch.GetTimestamp();
        work();
        return Stopwatch.GetElapsedTime(started).TotalMilliseconds;
    }
}
