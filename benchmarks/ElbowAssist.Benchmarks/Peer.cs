using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using ElbowAssist.Anatomy;
using ElbowAssist.Bench.Statistics;
using ElbowAssist.Models;
using ElbowAssist.Pipeline;
using ElbowAssist.Reading;
using ElbowAssist.Testing;

namespace ElbowAssist.Benchmarks;

/// <summary>
/// The whole read against the same chain in a few lines of Node (sharp and onnxruntime-node), film by film in turn, so that a
/// busy machine disturbs both alike: <c>peer [ROUNDS]</c>. Both decode the PNG to 16-bit grey, take a crop a pass, clip it at the
/// 0.5 and 99.5 percentiles, standardise it, run the view network and the lateral network the same number of times and find
/// the peak of every heatmap. Ours alone reduces with antialiasing, takes quality, locates the crop by the view network, works
/// out sub-pixel places with their spread, merges the passes, lays and redraws every measurement, and judges the film; the peer
/// takes single pixels of the whole film. One thread: ours one look at a time; two: ours two looks side by side, the
/// peer two threads within a run, which its runtime does not run side by side.
/// </summary>
internal static class Peer
{
    private static readonly int[] Sides = [512, 1024, 2236];
    private static readonly ReadOptions Options = new() { Patient = new Patient(480, Sex.Female) };

    public static void Run(int rounds)
    {
        Console.WriteLine("side  threads  passes  ours ms  peer ms  peer's decode ms  ours / peer");
        foreach (var side in Sides)
        {
            using var folder = new TemporaryFolder();
            var path = folder.Write("film.png", BenchmarkFilm.Png(side));
            foreach (var threads in new[] { 1, 2 })
            {
                Row(path, side, threads, rounds);
            }
        }
    }

    private static void Row(string path, int side, int threads, int rounds)
    {
        var passes = PassPlan.Default;
        using var models = ModelSet.Load(Path.Combine(Repository.Root, "models"), threads: threads);
        var reader = new FilmReader(models, new ToolIdentity("benchmarks", "0"), passes);
        using var peer = Start(threads, passes);
        _ = Answer(peer);
        List<double> ours = [], theirs = [], decode = [];
        for (var round = -2; round < rounds; round++)
        {
            var started = Stopwatch.GetTimestamp();
            _ = reader.Read(path, Options);
            var own = Stopwatch.GetElapsedTime(started).TotalMilliseconds;
            peer.StandardInput.WriteLine(path);
            var answer = Answer(peer);
            if (round >= 0)
            {
                ours.Add(own);
                theirs.Add(answer.GetProperty("whole").GetDouble());
                decode.Add(answer.GetProperty("decode").GetDouble());
            }
        }

        peer.StandardInput.Close();
        peer.WaitForExit();
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{side,4}  {threads,7}  {passes.View.Count + passes.Landmarks.Count,6}  {Quantile.Median(ours),7:F1}  {Quantile.Median(theirs),7:F1}  {Quantile.Median(decode),16:F1}  {Quantile.Median(ours) / Quantile.Median(theirs),11:F3}"));
    }

    private static Process Start(int threads, PassPlan passes) => Process.Start(new ProcessStartInfo("node")
    {
        ArgumentList =
        {
            Path.Combine(Repository.Root, "benchmarks", "peer", "chain.mjs"), threads.ToString(CultureInfo.InvariantCulture),
            passes.View.Count.ToString(CultureInfo.InvariantCulture), passes.Landmarks.Count.ToString(CultureInfo.InvariantCulture),
        },
        UseShellExecute = false,
        RedirectStandardInput = true,
        RedirectStandardOutput = true,
    })!;

    private static JsonElement Answer(Process peer) => peer.StandardOutput.ReadLine() is { } line
        ? JsonSerializer.Deserialize<JsonElement>(line)
        : throw new InvalidOperationException("The peer ended; see what it wrote, and run: npm install --ignore-scripts --prefix benchmarks/peer");
}
