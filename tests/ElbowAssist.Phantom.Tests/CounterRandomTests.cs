using ElbowAssist.Phantom.Sampling;

namespace ElbowAssist.Phantom.Tests;

public sealed class CounterRandomTests
{
    /// <summary>
    /// First output of SplitMix64 for state 0 after one increment, 0xE220A8397B1DCDAF: published with the reference C
    /// code of S. Vigna, prng.di.unimi.it (value from memory).
    /// </summary>
    [Fact]
    public void Mix_OfOneIncrement_IsThePublishedFirstOutput() =>
        Assert.Equal(0xE220A8397B1DCDAFUL, CounterRandom.Mix(0x9E3779B97F4A7C15UL));

    [Fact]
    public void SameSeedAndStream_GiveTheSameDraws_OthersDoNot()
    {
        var a = new CounterRandom(42, 1);
        var b = new CounterRandom(42, 1);
        var c = new CounterRandom(42, 2);
        var d = new CounterRandom(43, 1);
        var first = a.NextBits();
        Assert.Equal(first, b.NextBits());
        Assert.NotEqual(first, c.NextBits());
        Assert.NotEqual(first, d.NextBits());
    }

    [Fact]
    public void Normal_HasItsMeanAndSpread()
    {
        var random = new CounterRandom(7, 0);
        var draws = Enumerable.Range(0, 20000).Select(_ => random.Normal(5, 2)).ToArray();
        var mean = draws.Average();
        var sd = Math.Sqrt(draws.Select(x => (x - mean) * (x - mean)).Average());
        Assert.InRange(mean, 4.94, 5.06);
        Assert.InRange(sd, 1.93, 2.03);
    }
}
