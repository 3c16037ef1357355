using System.Buffers;

namespace ElbowAssist.Imaging.Normalisation;

/// <summary>Counts of the 65 536 grey values; percentiles without sorting. Rents its cells, so dispose it.</summary>
internal readonly ref struct GreyHistogram : IDisposable
{
    private const int Values = 1 << 16;
    private readonly int[] counts;

    public GreyHistogram()
    {
        counts = ArrayPool<int>.Shared.Rent(Values);
        counts.AsSpan(0, Values).Clear();
    }

    public void Add(ReadOnlySpan<ushort> values)
    {
        foreach (var value in values)
        {
            counts[value]++;
        }
    }

    public void Add(ushort value) => counts[value]++;

    /// <summary>Number of a value.</summary>
    public int Of(int value) => counts[value];

    /// <summary>The value of a rank from 0 when <paramref name="total"/> values are in order, at a share from 0 to 1.</summary>
    public int Percentile(double share, long total)
    {
        var rank = Math.Min(total - 1, (long)(total * share));
        long below = 0;
        for (var value = 0; value < Values; value++)
        {
            below += counts[value];
            if (below > rank)
            {
                return value;
            }
        }

        return Values - 1;
    }

    public void Dispose() => ArrayPool<int>.Shared.Return(counts);
}
