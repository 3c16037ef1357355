using System.Buffers;
using ElbowAssist.Geometry;
using ElbowAssist.Imaging.Normalisation;

namespace ElbowAssist.Imaging.Quality;

/// <summary>How bone is exposed: figures taken about places on it, at the scale in which an elbow is looked at.</summary>
/// <param name="Noise">
/// Standard deviation of the noise over the grey range of the bone (10 to 90 % of its values): by the mask of Immerkær (see
/// <see cref="FilmQuality.Noise"/>), but from the median of its responses, which edges move little.
/// </param>
/// <param name="BurnedOut">Share of the bone at the brightest value there is, where detail is lost; 0 to 1.</param>
/// <param name="Blur">Blur of the film at this scale, from 0 (crisp) to 1 (nothing fine left).</param>
public sealed record BoneExposure(double Noise, double BurnedOut, double Blur)
{
    private const int FewestSamples = 200;

    /// <summary>The median of the absolute values of a normal law over its standard deviation.</summary>
    private const double MedianOfNormal = 0.6745;

    /// <summary>Values this close to the brightest count as burned out: a thousandth of the range of 16 bits.</summary>
    private const int Plateau = 65;

    /// <summary>The figures on a reduced film, or null where too little of it lies about the places.</summary>
    internal static BoneExposure? Of(FilmLevel level, bool boneIsDark, IReadOnlyList<Point> places, double radius)
    {
        var most = (level.Width + 1) / 2 * ((level.Height + 1) / 2);
        using IMemoryOwner<bool> seen = MemoryPool<bool>.Shared.Rent(most);
        using IMemoryOwner<int> rented = MemoryPool<int>.Shared.Rent(most);
        using var values = new GreyHistogram();
        seen.Memory.Span[..most].Clear();
        var responses = rented.Memory.Span[..Look(level, boneIsDark, places, radius, seen.Memory.Span, rented.Memory.Span, values)];
        var count = responses.Length;
        if (count < FewestSamples)
        {
            return null;
        }

        var range = Math.Max(1, values.AtRank(count * 9 / 10) - values.AtRank(count / 10));
        return new BoneExposure(
            OrderStatistic.Of(responses, count / 2) / (6 * MedianOfNormal) / range,
            (double)values.CountFrom(Math.Max(0, values.AtRank(count - 1) - Plateau)) / count,
            BlurFigure.Of(level));
    }

    /// <summary>Counts the values of every second pixel and row of the discs, bone bright, and takes the responses of the mask there.</summary>
    /// <returns>How many.</returns>
    private static int Look(FilmLevel level, bool boneIsDark, IReadOnlyList<Point> places, double radius, Span<bool> seen, Span<int> responses, GreyHistogram values)
    {
        var count = 0;
        var (samples, width) = (level.Samples, level.Width);
        double rx = radius / level.ScaleX, ry = radius / level.ScaleY;
        foreach (var place in places)
        {
            double cx = place.X / level.ScaleX, cy = place.Y / level.ScaleY;
            for (var y = Even(Math.Max(1, cy - ry)); y < Math.Min(level.Height - 1, cy + ry); y += 2)
            {
                for (var x = Even(Math.Max(1, cx - rx)); x < Math.Min(width - 1, cx + rx); x += 2)
                {
                    double dx = (x + 0.5 - cx) / rx, dy = (y + 0.5 - cy) / ry;
                    if (x < 1 || y < 1 || (dx * dx) + (dy * dy) >= 1)
                    {
                        continue;
                    }

                    ref var before = ref seen[(y / 2 * ((width + 1) / 2)) + (x / 2)];
                    if (before)
                    {
                        continue;
                    }

                    before = true;
                    var at = (y * width) + x;
                    values.Add(boneIsDark ? (ushort)(ushort.MaxValue - samples[at]) : samples[at]);
                    responses[count++] = Math.Abs(
                        (4 * samples[at]) - (2 * (samples[at - 1] + samples[at + 1] + samples[at - width] + samples[at + width])) +
                        samples[at - width - 1] + samples[at - width + 1] + samples[at + width - 1] + samples[at + width + 1]);
                }
            }
        }

        return count;
    }

    private static int Even(double from) => 2 * (int)Math.Ceiling(from / 2);
}
