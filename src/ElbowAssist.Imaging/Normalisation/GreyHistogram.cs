using System.Buffers;
using System.Numerics;
using System.Runtime.InteropServices;

namespace ElbowAssist.Imaging.Normalisation;

/// <summary>Counts of the 65 536 grey values; percentiles without sorting. Rents its cells, so dispose it.</summary>
internal readonly ref struct GreyHistogram : IDisposable
{
    private const int Values = 1 << 16;

    /// <summary>Values that are passed over at once on the way to a percentile.</summary>
    private const int Block = 256;
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
    public int Percentile(double share, long total) => AtRank(Math.Min(total - 1, (long)(total * share)));

    /// <summary>The value of a rank from 0; the highest there can be if there are fewer values.</summary>
    public int AtRank(long rank)
    {
        long below = 0;
        var value = 0;
        while (value < Values - Block && below + Sum(counts.AsSpan(value, Block)) is var next && next <= rank)
        {
            (below, value) = (next, value + Block);
        }

        for (; value < Values; value++)
        {
            below += counts[value];
            if (below > rank)
            {
                return value;
            }
        }

        return Values - 1;
    }

    /// <summary>How many values there are from one on.</summary>
    public int CountFrom(int value) => Sum(counts.AsSpan(value, Values - value));

    public void Dispose() => ArrayPool<int>.Shared.Return(counts);

    private static int Sum(ReadOnlySpan<int> some)
    {
        var sums = Vector<int>.Zero;
        foreach (var few in MemoryMarshal.Cast<int, Vector<int>>(some))
        {
            sums += few;
        }

        var sum = Vector.Sum(sums);
        foreach (var count in some[(some.Length - (some.Length % Vector<int>.Count))..])
        {
            sum += count;
        }

        return sum;
    }
}
