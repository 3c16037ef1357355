using System.Numerics.Tensors;
using ElbowAssist.Geometry;

namespace ElbowAssist.Models.Decoding;

/// <summary>
/// Heatmap logits to places: softmax over the map, then the mean over the cells within <see cref="Radius"/> of the
/// highest. Cell i covers input pixels [i·stride, (i + 1)·stride); its centre is (i + 0.5)·stride.
/// </summary>
public static class HeatmapDecoder
{
    /// <summary>Cells on each side of the highest cell that are averaged.</summary>
    public const int Radius = 3;

    /// <summary>Cells around the highest in which no second place is sought, so that the two averages do not overlap.</summary>
    private const int Apart = (2 * Radius) + 1;

    /// <summary>Logits this far below the highest do not count.</summary>
    private const float Negligible = 20;

    /// <summary>Decodes one map.</summary>
    /// <param name="logits">Row by row; overwritten.</param>
    /// <param name="width">Columns of the map.</param>
    /// <param name="height">Rows of the map.</param>
    /// <param name="stride">Input pixels per cell.</param>
    /// <returns>NaN coordinates and no share if the map holds values that are not finite.</returns>
    public static HeatmapPeak Decode(Span<float> logits, int width, int height, int stride)
    {
        if (logits.Length != width * height)
        {
            throw new ArgumentException("The map must hold width × height values.", nameof(logits));
        }

        Span<float> rowHighest = height <= 1024 ? stackalloc float[height] : new float[height];
        for (var r = 0; r < height; r++)
        {
            rowHighest[r] = TensorPrimitives.Max<float>(logits.Slice(r * width, width));
        }

        var highest = TensorPrimitives.Max<float>(rowHighest);
        if (!float.IsFinite(highest))
        {
            return new HeatmapPeak(new Point(double.NaN, double.NaN), 0, new Point(double.NaN, double.NaN), 0, default);
        }

        var peak = logits.IndexOf(highest);
        // Rows that stay below e^−20 of the highest count as 0: together they weigh less than 0.0001 of a map of this size.
        Span<bool> counts = height <= 1024 ? stackalloc bool[height] : new bool[height];
        for (var r = 0; r < height; r++)
        {
            counts[r] = rowHighest[r] >= highest - Negligible;
        }

        var total = Exponentiate(logits, width, counts, highest);
        var first = Around(logits, width, counts, peak % width, peak / width);
        var second = Highest(logits, width, counts, peak % width, peak / width);
        var other = second < 0 ? default : Around(logits, width, counts, second % width, second / width);
        return new HeatmapPeak(
            new Point(first.X * stride, first.Y * stride),
            first.Sum / total,
            second < 0 ? new Point(double.NaN, double.NaN) : new Point(other.X * stride, other.Y * stride),
            second < 0 ? 0 : other.Sum / total,
            first.Spread * ((double)stride * stride));
    }

    /// <summary>exp(logit − highest) in place, in the rows that count.</summary>
    /// <returns>Their sum.</returns>
    private static double Exponentiate(Span<float> map, int width, ReadOnlySpan<bool> counts, float highest)
    {
        double total = 0;
        for (var r = 0; r < counts.Length; r++)
        {
            if (!counts[r])
            {
                continue;
            }

            var line = map.Slice(r * width, width);
            TensorPrimitives.Subtract(line, highest, line);
            TensorPrimitives.Exp(line, line);
            total += TensorPrimitives.Sum<float>(line);
        }

        return total;
    }

    private static (double X, double Y, double Sum, Covariance Spread) Around(
        ReadOnlySpan<float> map, int width, ReadOnlySpan<bool> counts, int column, int row)
    {
        double sum = 0, x = 0, y = 0, xx = 0, xy = 0, yy = 0;
        for (var r = Math.Max(0, row - Radius); r <= Math.Min(counts.Length - 1, row + Radius); r++)
        {
            for (var c = Math.Max(0, column - Radius); counts[r] && c <= Math.Min(width - 1, column + Radius); c++)
            {
                double p = map[(r * width) + c];
                double dx = c - column, dy = r - row;
                sum += p;
                x += p * dx;
                y += p * dy;
                xx += p * dx * dx;
                xy += p * dx * dy;
                yy += p * dy * dy;
            }
        }

        x /= sum;
        y /= sum;
        var spread = new Covariance((xx / sum) - (x * x), (xy / sum) - (x * y), (yy / sum) - (y * y));
        return (column + 0.5 + x, row + 0.5 + y, sum, spread);
    }

    /// <summary>The highest cell outside the neighbourhood of another, or −1 if there is none.</summary>
    private static int Highest(ReadOnlySpan<float> map, int width, ReadOnlySpan<bool> counts, int column, int row)
    {
        var best = 0f;
        int start = -1, length = 0;
        for (var r = 0; r < counts.Length; r++)
        {
            if (!counts[r])
            {
                continue;
            }

            if (Math.Abs(r - row) > Apart)
            {
                Consider(map, r * width, width, ref best, ref start, ref length);
                continue;
            }

            var left = Math.Max(0, column - Apart);
            var right = Math.Min(width, column + Apart + 1);
            Consider(map, r * width, left, ref best, ref start, ref length);
            Consider(map, (r * width) + right, width - right, ref best, ref start, ref length);
        }

        return start < 0 ? -1 : start + map.Slice(start, length).IndexOf(best);
    }

    private static void Consider(ReadOnlySpan<float> map, int from, int count, ref float best, ref int start, ref int length)
    {
        if (count > 0 && TensorPrimitives.Max(map.Slice(from, count)) is var highest && highest > best)
        {
            (best, start, length) = (highest, from, count);
        }
    }
}
