using ElbowAssist.Phantom.Sampling;

namespace ElbowAssist.Phantom.Exposure.Chain;

/// <summary>
/// Quantum and electronic noise. Quanta are counted as Poisson numbers, here by the normal law of equal variance; every
/// pixel pair has its own draw of a counter-based generator, so a pixel depends on the seed and its place alone.
/// </summary>
internal static class QuantumNoise
{
    /// <summary>Photons per mm² and µGy at the RQA 3 beam quality (IEC 62220-1-1, from memory), near that of extremity films.</summary>
    public const double QuantaPerSquareMillimetreAndMicrogray = 21759;

    /// <summary>Adds noise to a signal.</summary>
    /// <param name="signal">Signal as a share of that in air.</param>
    /// <param name="seed">Seed of the noise.</param>
    /// <param name="quantaPerUnit">Detected quanta per pixel at signal 1.</param>
    /// <param name="electronicNoise">Electronic noise in quanta.</param>
    public static void Add(ImagePlane signal, ulong seed, double quantaPerUnit, double electronicNoise)
    {
        var pixels = signal.Pixels.AsSpan(0, signal.Count);
        var key = CounterRandom.Mix(seed ^ 0x51A7D15EUL);
        var perQuantum = (float)(1 / quantaPerUnit);
        var floor = (float)(electronicNoise * electronicNoise / (quantaPerUnit * quantaPerUnit));
        for (var i = 0; i < pixels.Length; i += 2)
        {
            var bits = CounterRandom.Mix(key + ((ulong)i * 0x9E3779B97F4A7C15UL));
            var u = ((uint)(bits >> 40) + 1) * (1f / (1 << 24));
            var angle = (uint)(bits & 0xFFFFFF) * (MathF.Tau / (1 << 24));
            var radius = MathF.Sqrt(-2 * MathF.Log(u));
            var (sine, cosine) = MathF.SinCos(angle);
            pixels[i] += radius * cosine * MathF.Sqrt((MathF.Max(0, pixels[i]) * perQuantum) + floor);
            if (i + 1 < pixels.Length)
            {
                pixels[i + 1] += radius * sine * MathF.Sqrt((MathF.Max(0, pixels[i + 1]) * perQuantum) + floor);
            }
        }
    }
}
