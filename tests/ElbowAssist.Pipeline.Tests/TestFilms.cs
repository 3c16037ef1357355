using ElbowAssist.Geometry;
using ElbowAssist.Imaging;

namespace ElbowAssist.Pipeline.Tests;

/// <summary>Films made of shapes, bone bright.</summary>
internal static class TestFilms
{
    public static Radiograph Limb(int width = 500, int height = 600) => Of(width, height, (x, y) =>
    {
        var fromAxis = Math.Abs((x / width) - 0.5);
        var tissue = fromAxis > 0.3 ? 0.05 : 0.05 + (0.35 * Math.Sqrt(1 - Math.Pow(fromAxis / 0.3, 2)));
        return tissue + (0.4 * Math.Exp(-Math.Pow((fromAxis - 0.1) / 0.02, 2))) + (0.02 * Math.Sin(x) * Math.Cos(y));
    });

    /// <summary>A faint limb with one bright and one dark spot.</summary>
    public static Radiograph Spots(Point bright, Point dark) => Of(500, 500, (x, y) =>
        0.4 + (0.1 * Math.Sin(x / 40) * Math.Sin(y / 50)) + (0.03 * Math.Sin(x) * Math.Cos(y)) + (0.45 * Math.Exp(-Math.Pow(new Point(x, y).DistanceTo(bright), 2) / 450))
        - (0.3 * Math.Exp(-Math.Pow(new Point(x, y).DistanceTo(dark), 2) / 450))) is var film
            ? film.With(film.Facts with { BoneIsDark = false })
            : throw new InvalidOperationException();

    public static Radiograph Of(int width, int height, Func<double, double, double> value, double coloured = 0)
    {
        var pixels = new ushort[width * height];
        for (var i = 0; i < pixels.Length; i++)
        {
            pixels[i] = (ushort)Math.Round(65535 * Math.Clamp(value((i % width) + 0.5, (i / width) + 0.5), 0, 1));
        }

        return Radiograph.FromPixels(pixels, width, height, new RadiographFacts
        {
            FileName = "film.png",
            Sha256 = new string('0', 64),
            Format = FilmFormat.Pixels,
            BitDepth = 16,
            ColouredShare = coloured,
        });
    }
}
