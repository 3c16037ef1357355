using System.Buffers;

namespace ElbowAssist.Imaging.Normalisation;

/// <summary>
/// Whether bone is dark on the film, told from the picture: the air beside a limb is the flattest part of a film and
/// lies at its rim, bone is structured and lies inside. Turning the grey values round turns the sign of the score.
/// </summary>
/// <param name="BoneIsDark">True if the grey values must be turned round so that bone is bright.</param>
/// <param name="Score">Positive if bone is bright; near 0 the picture does not tell. Infinite if the file says it.</param>
public readonly record struct Polarity(bool BoneIsDark, double Score)
{
    /// <summary>Below this absolute score both polarities should be tried (chosen on simulated films).</summary>
    public const double Unsure = 0.5;

    /// <summary>Weight of rim against middle beside flat against structured (construction of this project).</summary>
    private const double RimWeight = 3;

    internal static Polarity Of(FilmLevel level, ExposedField field, bool? stated)
    {
        if (stated is { } known)
        {
            return new Polarity(known, known ? double.NegativeInfinity : double.PositiveInfinity);
        }

        int left = (int)(field.Left / level.ScaleX), top = (int)(field.Top / level.ScaleY);
        int right = Math.Min(level.Width, (int)(field.Right / level.ScaleX));
        int bottom = Math.Min(level.Height, (int)(field.Bottom / level.ScaleY));
        return right - left < 6 || bottom - top < 6 ? new Polarity(false, 0) : Judge(level, left, top, right, bottom);
    }

    private static Polarity Judge(FilmLevel level, int left, int top, int right, int bottom)
    {
        using var histogram = new GreyHistogram();
        double rim = 0, middle = 0;
        int rimCount = 0, middleCount = 0, count = 0;
        for (var y = top + 1; y < bottom - 1; y++)
        {
            for (var x = left + 1; x < right - 1; x++)
            {
                var value = level.Samples[(y * level.Width) + x];
                histogram.Add(value);
                count++;
                var fromRim = Math.Min(
                    Math.Min(x - left, right - 1 - x) / (double)(right - left),
                    Math.Min(y - top, bottom - 1 - y) / (double)(bottom - top));
                (rim, rimCount) = fromRim < 0.1 ? (rim + value, rimCount + 1) : (rim, rimCount);
                (middle, middleCount) = fromRim > 0.25 ? (middle + value, middleCount + 1) : (middle, middleCount);
            }
        }

        double range = Math.Max(1, histogram.Percentile(0.99, count) - histogram.Percentile(0.01, count));
        var (lowFifth, highFifth) = (histogram.Percentile(0.2, count), histogram.Percentile(0.8, count));
        var (dark, bright) = MedianGradients(level, left, top, right, bottom, lowFifth, highFifth);
        const double floor = 0.01;
        var flatness = Math.Log(((bright / range) + floor) / ((dark / range) + floor));
        var rise = middleCount == 0 || rimCount == 0 ? 0 : ((middle / middleCount) - (rim / rimCount)) / range;
        var score = flatness + (RimWeight * rise);
        return new Polarity(score < 0, score);
    }

    /// <summary>Median grey step to the neighbours among the darkest and among the brightest fifth.</summary>
    private static (double Dark, double Bright) MedianGradients(
        FilmLevel level, int left, int top, int right, int bottom, int lowFifth, int highFifth)
    {
        var most = (right - left) * (bottom - top);
        using IMemoryOwner<int> darkRented = MemoryPool<int>.Shared.Rent(most), brightRented = MemoryPool<int>.Shared.Rent(most);
        Span<int> dark = darkRented.Memory.Span, bright = brightRented.Memory.Span;
        int darkCount = 0, brightCount = 0;
        for (var y = top + 1; y < bottom - 1; y++)
        {
            for (var x = left + 1; x < right - 1; x++)
            {
                var at = (y * level.Width) + x;
                var value = level.Samples[at];
                if (value > lowFifth && value < highFifth)
                {
                    continue;
                }

                var step = Math.Abs(level.Samples[at + 1] - level.Samples[at - 1]) +
                    Math.Abs(level.Samples[at + level.Width] - level.Samples[at - level.Width]);
                if (value <= lowFifth)
                {
                    dark[darkCount++] = step;
                }

                if (value >= highFifth)
                {
                    bright[brightCount++] = step;
                }
            }
        }

        return (OrderStatistic.Of(dark[..darkCount], darkCount / 2), OrderStatistic.Of(bright[..brightCount], brightCount / 2));
    }
}
