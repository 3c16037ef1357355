using ElbowAssist.Imaging.Normalisation;

namespace ElbowAssist.Imaging.Quality;

/// <summary>
/// Noise after J. Immerkær, Fast noise variance estimation, Computer Vision and Image Understanding 64 (1996) 300–302:
/// the mean absolute response of a mask that ignores planes and edges (reference from memory).
/// </summary>
internal static class NoiseFigure
{
    private const int EnoughSamples = 1 << 17;

    /// <summary>Standard deviation in grey values; exact in the mean for Gaussian noise on a plane. 0 if the field is under 3 pixels.</summary>
    public static double StandardDeviation(Radiograph film, ExposedField field)
    {
        if (field.Width < 3 || field.Height < 3)
        {
            return 0;
        }

        var step = Math.Max(1, (int)Math.Sqrt((double)field.Width * field.Height / EnoughSamples));
        var pixels = film.Pixels;
        var width = film.Width;
        long sum = 0, count = 0;
        for (var y = field.Top + 1; y < field.Bottom - 1; y += step)
        {
            for (var x = field.Left + 1; x < field.Right - 1; x += step)
            {
                var at = (y * width) + x;
                var response = (4 * pixels[at]) - (2 * (pixels[at - 1] + pixels[at + 1] + pixels[at - width] + pixels[at + width])) +
                    pixels[at - width - 1] + pixels[at - width + 1] + pixels[at + width - 1] + pixels[at + width + 1];
                sum += Math.Abs(response);
                count++;
            }
        }

        return Math.Sqrt(Math.PI / 2) / 6 * sum / count;
    }
}
