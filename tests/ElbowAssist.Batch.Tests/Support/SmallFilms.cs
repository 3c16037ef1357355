using System.Globalization;
using System.Text;
using ElbowAssist.Testing;

namespace ElbowAssist.Batch.Tests.Support;

/// <summary>Small films that differ, quickly written: most are read, every twentieth is refused and every twenty-first is damaged.</summary>
internal static class SmallFilms
{
    private const int Width = 200;
    private const int Height = 240;

    /// <summary>Writes films into folders of a hundred, some with a sidecar.</summary>
    public static string Write(TemporaryFolder folder, int count)
    {
        for (var i = 0; i < count; i++)
        {
            var name = string.Create(CultureInfo.InvariantCulture, $"films/{i / 100:000}/{i:00000}.png");
            var film = Film(i);
            folder.Write(name, i % 21 == 20 ? film.AsSpan(0, film.Length / 2) : film);
            if (i % 3 == 0)
            {
                folder.Write(name + ".info.json", Encoding.UTF8.GetBytes(string.Create(
                    CultureInfo.InvariantCulture, $"{{\"ageMonths\": {i % 900}, \"sex\": \"{(i % 2 == 0 ? "F" : "M")}\", \"rowSpacingMm\": 0.5, \"columnSpacingMm\": 0.5}}")));
            }
        }

        return folder.File("films");
    }

    /// <summary>A limb of bright edges; one of no contrast at every twentieth place.</summary>
    public static byte[] Film(int seed)
    {
        var middle = 0.5 + (0.05 * Math.Sin(seed));
        return PlainPng.Grey16(Width, Height, (x, y) =>
        {
            if (seed % 20 == 19)
            {
                return 30_000;
            }

            var fromAxis = Math.Abs((x / (double)Width) - middle);
            var tissue = fromAxis > 0.3 ? 0.05 : 0.05 + (0.35 * Math.Sqrt(1 - Math.Pow(fromAxis / 0.3, 2)));
            var bone = 0.4 * Math.Exp(-Math.Pow((fromAxis - 0.1) / 0.02, 2));
            var noise = ((((x * 73856093) ^ (y * 19349663) ^ (seed * 83492791)) & 255) / 255.0) - 0.5;
            return (ushort)(65535 * Math.Clamp(tissue + bone + (0.03 * noise), 0, 1));
        });
    }
}
