namespace ElbowAssist.Bench.Reports;

/// <summary>An axis from one round number to another, with a handful of round ticks.</summary>
internal sealed record Axis(double Low, double High, IReadOnlyList<double> Ticks)
{
    private const int WantedTicks = 6;

    /// <summary>An axis over a stated range, or over values.</summary>
    public static Axis Over((double Low, double High)? range, IEnumerable<double> values)
    {
        var all = values.Where(double.IsFinite).DefaultIfEmpty(0).ToList();
        var (low, high) = range ?? (all.Min(), all.Max());
        if (high - low < 1e-9)
        {
            (low, high) = (low - 1, high + 1);
        }

        var step = Step((high - low) / WantedTicks);
        if (range is null)
        {
            (low, high) = (Math.Floor(low / step) * step, Math.Ceiling(high / step) * step);
        }

        var first = Math.Ceiling((low - 1e-9) / step);
        return new Axis(low, high, [.. Enumerable.Range(0, (int)Math.Floor(((high - low) / step) + 1e-9) + 1).Select(i => Math.Round((first + i) * step, 9)).Where(t => t <= high + 1e-9)]);
    }

    /// <summary>The next of 1, 2 and 5 times a power of ten.</summary>
    private static double Step(double atLeast)
    {
        var power = Math.Pow(10, Math.Floor(Math.Log10(atLeast)));
        return power * (atLeast <= power ? 1 : atLeast <= 2 * power ? 2 : atLeast <= 5 * power ? 5 : 10);
    }
}
