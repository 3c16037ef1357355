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
        var (values, responses) = Samples(level, boneIsDark, places, radius);
        if (values.Count < FewestSamples)
        {
            return null;
        }

        values.Sort();
        responses.Sort();
        var range = Math.Max(1, values[values.Count * 9 / 10] - values[values.Count / 10]);
        var plain = values[^1] - Plateau;
        return new BoneExposure(
            responses[responses.Count / 2] / (6 * MedianOfNormal) / range,
            (double)values.Count(v => v >= plain) / values.Count,
            BlurFigure.Of(level));
    }

    /// <summary>Values of every second pixel and row of the discs, bone bright, and the responses of the mask there.</summary>
    private static (List<int> Values, List<int> Responses) Samples(FilmLevel level, bool boneIsDark, IReadOnlyList<Point> places, double radius)
    {
        var (values, responses) = (new List<int>(), new List<int>());
        var seen = new HashSet<int>();
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
                    var at = (y * width) + x;
                    if (x < 1 || y < 1 || (dx * dx) + (dy * dy) >= 1 || !seen.Add(at))
                    {
                        continue;
                    }

                    values.Add(boneIsDark ? ushort.MaxValue - samples[at] : samples[at]);
                    responses.Add(Math.Abs(
                        (4 * samples[at]) - (2 * (samples[at - 1] + samples[at + 1] + samples[at - width] + samples[at + width])) +
                        samples[at - width - 1] + samples[at - width + 1] + samples[at + width - 1] + samples[at + width + 1]));
                }
            }
        }

        return (values, responses);
    }

    private static int Even(double from) => 2 * (int)Math.Ceiling(from / 2);
}
