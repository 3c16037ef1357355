using ElbowAssist.Anatomy;
using ElbowAssist.Phantom;
using ElbowAssist.Phantom.Pose;
using ElbowAssist.Testing;

namespace ElbowAssist.Benchmarks;

/// <summary>
/// A simulated adult lateral of the size that a reading is budgeted for, 5 million pixels of 16 bits: rendered at half
/// the size, doubled, and given noise so that it compresses as films do.
/// </summary>
internal static class BenchmarkFilm
{
    private const int Side = 2236;

    public static byte[] Png(int side = Side)
    {
        var options = new SimulationOptions { FromAgeYears = 30, ToAgeYears = 60, InjuredShare = 0, Adequacy = Adequacy.Good };
        var film = new FilmSimulator().Simulate(seed: 2, View.Lateral, options, side / 2);
        var random = new Random(1);
        return PlainPng.Grey16(2 * film.Width, 2 * film.Height, (x, y) =>
            (ushort)Math.Clamp(film.Pixels[(y / 2 * film.Width) + (x / 2)] + random.Next(-60, 61), 0, 65535));
    }
}
