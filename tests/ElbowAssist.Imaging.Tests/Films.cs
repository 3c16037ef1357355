namespace ElbowAssist.Imaging.Tests;

/// <summary>Simple films made of shapes; bone bright, 16 bit.</summary>
internal static class Films
{
    public static Radiograph Of(int width, int height, Func<double, double, double> value, bool inverted = false)
    {
        var pixels = new ushort[width * height];
        for (var y = 0; y < height; y++)
        {
            for (var x = 0; x < width; x++)
            {
                var grey = Math.Clamp(value(x + 0.5, y + 0.5), 0, 1) * 65535;
                pixels[(y * width) + x] = (ushort)Math.Round(inverted ? 65535 - grey : grey);
            }
        }

        return Radiograph.FromPixels(pixels, width, height, Facts);
    }

    /// <summary>A limb from top to bottom: air, soft tissue, a bone with a bright cortex and trabeculae, and noise.</summary>
    public static Radiograph Limb(int width = 400, int height = 500, bool inverted = false)
    {
        var random = new Random(7);
        return Of(width, height, (x, y) => Shade(x / width, y / height) + (0.01 * (random.NextDouble() - 0.5)), inverted);
    }

    private static RadiographFacts Facts => new()
    {
        FileName = "film.png",
        Sha256 = new string('0', 64),
        Format = FilmFormat.Pixels,
        BitDepth = 16,
    };

    private static double Shade(double x, double y)
    {
        var fromAxis = Math.Abs(x - 0.5 - (0.05 * Math.Sin(3 * y)));
        var tissue = fromAxis > 0.3 ? 0.05 : 0.05 + (0.35 * Math.Sqrt(1 - Math.Pow(fromAxis / 0.3, 2)));
        var cortex = Math.Exp(-Math.Pow((fromAxis - 0.1) / 0.015, 2)) * 0.4;
        var marrow = fromAxis < 0.1 ? 0.15 + (0.05 * Math.Sin(x * 300) * Math.Sin(y * 260)) : 0;
        return tissue + cortex + marrow;
    }
}
