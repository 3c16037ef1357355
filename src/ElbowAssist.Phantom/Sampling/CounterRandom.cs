namespace ElbowAssist.Phantom.Sampling;

/// <summary>
/// A counter-based generator: draw n of stream s of seed k is a fixed function of (k, s, n), so no draw depends on how
/// many another part has taken. The mixing function is the 64-bit finaliser of SplitMix (Steele, Lea and Flood,
/// OOPSLA 2014, doi 10.1145/2660193.2660195).
/// </summary>
public sealed class CounterRandom
{
    private const ulong Increment = 0x9E3779B97F4A7C15UL;
    private readonly ulong key;
    private ulong counter;

    /// <summary>The stream of a seed.</summary>
    /// <param name="seed">Seed of the patient.</param>
    /// <param name="stream">Number of the stream; each part that draws has its own.</param>
    public CounterRandom(ulong seed, ulong stream)
    {
        key = Mix(Mix(seed + Increment) ^ (stream * 0xD1342543DE82EF95UL));
    }

    /// <summary>The next 64 random bits.</summary>
    public ulong NextBits() => Mix(key + (++counter * Increment));

    /// <summary>Uniform from 0 (included) to 1 (not included).</summary>
    public double Uniform() => (NextBits() >> 11) * (1.0 / (1UL << 53));

    /// <summary>Uniform between two limits.</summary>
    public double Uniform(double from, double to) => from + ((to - from) * Uniform());

    /// <summary>True with a probability.</summary>
    public bool Chance(double probability) => Uniform() < probability;

    /// <summary>Normal, cut at ±3 standard deviations by drawing again.</summary>
    public double Normal(double mean, double standardDeviation)
    {
        while (true)
        {
            var radius = Math.Sqrt(-2 * Math.Log(1 - Uniform()));
            var z = radius * Math.Cos(2 * Math.PI * Uniform());
            if (Math.Abs(z) <= 3)
            {
                return mean + (standardDeviation * z);
            }
        }
    }

    /// <summary>Normal within limits, by drawing again (at most 64 times, then the nearer limit).</summary>
    public double Normal(double mean, double standardDeviation, double from, double to)
    {
        for (var i = 0; i < 64; i++)
        {
            var value = Normal(mean, standardDeviation);
            if (value >= from && value <= to)
            {
                return value;
            }
        }

        return Math.Clamp(mean, from, to);
    }

    /// <summary>The SplitMix64 finaliser.</summary>
    public static ulong Mix(ulong z)
    {
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
        return z ^ (z >> 31);
    }
}
