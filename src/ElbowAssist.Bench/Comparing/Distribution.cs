using ElbowAssist.Bench.Scoring;

namespace ElbowAssist.Bench.Comparing;

/// <summary>The cells of an error distribution: mean with its interval, SD, percentiles, largest.</summary>
internal static class Distribution
{
    public static IReadOnlyList<object> Of(ErrorSummary? s) => s is null
        ? [.. Enumerable.Repeat((object)double.NaN, 10)]
        : [s.Mean, s.MeanLow, s.MeanHigh, s.StandardDeviation, s.P25, s.Median, s.P75, s.P90, s.P95, s.Maximum];
}
