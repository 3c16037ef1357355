using System.Buffers;

namespace ElbowAssist.Imaging.Normalisation;

/// <summary>
/// The robust grey range of the exposed field, and how much of the field lies at its ends.
/// </summary>
/// <param name="Low">0.5th percentile.</param>
/// <param name="High">99.5th percentile.</param>
/// <param name="AtLowest">Share of the field at the lowest value that occurs.</param>
/// <param name="AtHighest">Share of the field at the highest value that occurs.</param>
public readonly record struct GreyWindow(int Low, int High, double AtLowest, double AtHighest)
{
    private const double Tail = 0.005;
    private const int EnoughSamples = 1 << 20;

    /// <summary>High − Low, at least 1.</summary>
    public int Range => Math.Max(1, High - Low);

    /// <summary>The window of a field; large fields are sampled on every n-th row.</summary>
    internal static GreyWindow Of(Radiograph film, ExposedField field)
    {
        var step = Math.Max(1, (int)((long)field.Width * field.Height / EnoughSamples));
        var histogram = ArrayPool<int>.Shared.Rent(1 << 16);
        Array.Clear(histogram);
        long total = 0;
        for (var y = field.Top; y < field.Bottom; y += step)
        {
            foreach (var value in film.Pixels.Slice((y * film.Width) + field.Left, field.Width))
            {
                histogram[value]++;
            }

            total += field.Width;
        }

        var window = FromHistogram(histogram, total);
        ArrayPool<int>.Shared.Return(histogram);
        return window;
    }

    /// <summary>The window of the values counted in a histogram of 65 536 cells.</summary>
    internal static GreyWindow FromHistogram(int[] histogram, long total)
    {
        var lowest = Percentile(histogram, 0);
        var highest = Percentile(histogram, total - 1);
        return new GreyWindow(
            Percentile(histogram, (long)(total * Tail)),
            Percentile(histogram, (long)(total * (1 - Tail))),
            histogram[lowest] / (double)total,
            histogram[highest] / (double)total);
    }

    private static int Percentile(int[] histogram, long rank)
    {
        long below = 0;
        for (var value = 0; value < 1 << 16; value++)
        {
            below += histogram[value];
            if (below > rank)
            {
                return value;
            }
        }

        return (1 << 16) - 1;
    }
}
