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
        using var histogram = new GreyHistogram();
        long total = 0;
        for (var y = field.Top; y < field.Bottom; y += step)
        {
            histogram.Add(film.Pixels.Slice((y * film.Width) + field.Left, field.Width));
            total += field.Width;
        }

        return From(histogram, total);
    }

    /// <summary>The window of counted values.</summary>
    internal static GreyWindow From(GreyHistogram histogram, long total)
    {
        var lowest = histogram.Percentile(0, total);
        var highest = histogram.Percentile(1, total);
        return new GreyWindow(
            histogram.Percentile(Tail, total),
            histogram.Percentile(1 - Tail, total),
            histogram.Of(lowest) / (double)total,
            histogram.Of(highest) / (double)total);
    }
}
