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
        var pixels = new List<(int Value, int Gradient, double FromRim)>();
        for (var y = top + 1; y < bottom - 1; y++)
        {
            for (var x = left + 1; x < right - 1; x++)
            {
                var at = (y * level.Width) + x;
                var gradient = Math.Abs(level.Samples[at + 1] - level.Samples[at - 1]) +
                    Math.Abs(level.Samples[at + level.Width] - level.Samples[at - level.Width]);
                var fromRim = Math.Min(
                    Math.Min(x - left, right - 1 - x) / (double)(right - left),
                    Math.Min(y - top, bottom - 1 - y) / (double)(bottom - top));
                pixels.Add((level.Samples[at], gradient, fromRim));
            }
        }

        return pixels.Count < 16 ? new Polarity(false, 0) : Judge(pixels);
    }

    private static Polarity Judge(List<(int Value, int Gradient, double FromRim)> pixels)
    {
        pixels.Sort((a, b) => a.Value.CompareTo(b.Value));
        var fifth = pixels.Count / 5;
        double range = Math.Max(1, pixels[^(1 + (pixels.Count / 100))].Value - pixels[pixels.Count / 100].Value);
        var dark = MedianGradient(pixels.Take(fifth)) / range;
        var bright = MedianGradient(pixels.Skip(pixels.Count - fifth)) / range;
        const double floor = 0.01;
        var flatness = Math.Log((bright + floor) / (dark + floor));

        var rim = pixels.Where(p => p.FromRim < 0.1).Average(p => (double)p.Value);
        var middle = pixels.Where(p => p.FromRim > 0.25).Select(p => (double)p.Value).DefaultIfEmpty(rim).Average();
        var score = flatness + (RimWeight * (middle - rim) / range);
        return new Polarity(score < 0, score);
    }

    private static double MedianGradient(IEnumerable<(int Value, int Gradient, double FromRim)> pixels)
    {
        var sorted = pixels.Select(p => p.Gradient).ToArray();
        Array.Sort(sorted);
        return sorted[sorted.Length / 2];
    }
}
