using System.Diagnostics;
using ElbowAssist.Bench.Comparing;
using ElbowAssist.Bench.Statistics;
using ElbowAssist.Bench.Tables;

namespace ElbowAssist.Cli.Benching;

/// <summary>Time by stage and entrant, and what this run took.</summary>
internal static class TimingTables
{
    private const double Mebibyte = 1 << 20;

    public static IReadOnlyList<Table> Of(IReadOnlyList<Entrant> entrants, RunCost cost) =>
    [
        new(
            "time",
            "milliseconds by stage of a reading, one thread a film, over every film; a stage that entrants share stands with each",
            ["entrant", "stage", "films", "median", "p95", "mean"],
            [.. entrants.SelectMany(e => e.Answers.Values.SelectMany(a => a.Reading.Timing).GroupBy(t => t.Key, StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal)
                .Select(g => (IReadOnlyList<object>)[e.Name, g.Key, g.Count(), Quantile.Median(g.Select(t => t.Value)), Quantile.Of(g.Select(t => t.Value), 0.95), g.Average(t => t.Value)]))]),
        new(
            "run",
            "what this run took over the films it still had to look at",
            ["films", "entrants", "seconds", "filmsPerSecond", "managedMegabytesPerReading", "peakMemoryMegabytes"],
            [[cost.Films, cost.Entrants, cost.Time.TotalSeconds, cost.Films / cost.Time.TotalSeconds, cost.AllocatedBytes / Mebibyte / (cost.Films * Math.Max(1, cost.Entrants)), Peak() / Mebibyte]]),
    ];

    private static double Peak()
    {
        using var process = Process.GetCurrentProcess();
        return process.PeakWorkingSet64;
    }
}
