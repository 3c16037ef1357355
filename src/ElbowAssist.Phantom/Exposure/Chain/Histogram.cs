namespace ElbowAssist.Phantom.Exposure.Chain;

/// <summary>Percentiles of masked pixels by counting.</summary>
internal static class Histogram
{
    private const int Bins = 4096;

    /// <summary>Values at given percentiles, to within the range over 4096.</summary>
    /// <param name="values">Values.</param>
    /// <param name="use">Which values count, by index.</param>
    /// <param name="count">How many values there are.</param>
    /// <param name="percentiles">Percentiles from 0 to 100.</param>
    /// <param name="fewest">Least number of counted values; below it the answer is null.</param>
    public static float[]? Percentiles(float[] values, Func<int, bool> use, int count, double[] percentiles, int fewest)
    {
        var low = float.MaxValue;
        var high = float.MinValue;
        var counted = 0;
        for (var i = 0; i < count; i++)
        {
            if (use(i))
            {
                low = MathF.Min(low, values[i]);
                high = MathF.Max(high, values[i]);
                counted++;
            }
        }

        if (counted < Math.Max(1, fewest))
        {
            return null;
        }

        var counts = new int[Bins];
        var scale = (Bins - 1) / MathF.Max(high - low, 1e-9f);
        for (var i = 0; i < count; i++)
        {
            if (use(i))
            {
                counts[(int)((values[i] - low) * scale)]++;
            }
        }

        return [.. percentiles.Select(p => low + (At(counts, counted * p / 100) / scale))];
    }

    private static int At(int[] counts, double rank)
    {
        var sum = 0;
        for (var bin = 0; bin < counts.Length; bin++)
        {
            sum += counts[bin];
            if (sum >= rank)
            {
                return bin;
            }
        }

        return counts.Length - 1;
    }
}
