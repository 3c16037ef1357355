using ElbowAssist.Testing;

namespace ElbowAssist.Benchmarks;

/// <summary>A film of the size that a reading is budgeted for, 2000 × 2500 pixels of 16 bits, with noise as films have.</summary>
internal static class BenchmarkFilm
{
    public const int Width = 2000;
    public const int Height = 2500;

    public static byte[] Png()
    {
        var random = new Random(1);
        return PlainPng.Grey16(Width, Height, (x, y) =>
        {
            var fromAxis = Math.Abs(((double)x / Width) - 0.5);
            var tissue = fromAxis > 0.3 ? 0.05 : 0.05 + (0.35 * Math.Sqrt(1 - Math.Pow(fromAxis / 0.3, 2)));
            var bone = 0.4 * Math.Exp(-Math.Pow((fromAxis - 0.1) / 0.02, 2));
            return (ushort)(65535 * (tissue + bone + (0.002 * random.NextDouble())));
        });
    }
}
