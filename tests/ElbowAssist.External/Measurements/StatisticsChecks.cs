using ElbowAssist.Geometry;
using ElbowAssist.Geometry.Spread;

namespace ElbowAssist.External.Measurements;

/// <summary>Statistics of landmark errors against closed forms of the textbook distributions.</summary>
public sealed class StatisticsChecks
{
    // Rayleigh distribution (errors of equal size in both directions, σ = 1): mean √(π/2), median √(2 ln 2),
    // share within 2 is 1 − e⁻², 90 % radius √(2 ln 10).
    [Fact]
    public void RadialErrors_FollowRayleigh()
    {
        var drawn = Redraws.Of(
            [new Point(0, 0)],
            JointCovariance.Independent([Covariance.Isotropic(1)]),
            (p, v) => v[0] = p[0].DistanceTo(new Point(0, 0)),
            1,
            400_000,
            seed: 39);
        var radii = drawn.Of(0).ToArray();
        Array.Sort(radii);
        Assert.Equal(1.2533, radii.Average(), 0.005);
        Assert.Equal(1.1774, radii[radii.Length / 2], 0.006);
        Assert.Equal(0.8647, radii.Count(r => r <= 2) / (double)radii.Length, 0.002);
        Assert.Equal(2.1460, radii[(int)(0.9 * radii.Length)], 0.01);
    }

    // Split conformal rank ⌈(n + 1)(1 − α)⌉; needs n ≥ 1/α − 1, 19 for 95 %.
    [Theory]
    [InlineData(99, 0.90, 90)]
    [InlineData(199, 0.95, 190)]
    [InlineData(500, 0.90, 451)]
    [InlineData(19, 0.95, 19)]
    public void ConformalRank(int count, double coverage, int rank)
    {
        Assert.Equal(rank, ConformalQuantile.Rank(count, coverage));
        double[] scores = [.. Enumerable.Range(1, count).Select(i => (double)i)];
        Assert.Equal(rank, ConformalQuantile.Of(scores, coverage));
    }

    [Fact]
    public void ConformalFactor_OfTooFewFilms_IsWithoutBound() =>
        Assert.Equal(double.PositiveInfinity, ConformalQuantile.Of([.. Enumerable.Range(1, 18).Select(i => (double)i)], 0.95));

    // Coverage over repeated calibrations follows Beta(k, n + 1 − k): for n = 200 at 95 %, k = 191, mean 191/201 = 0.9502, deviation 0.0153.
    [Fact]
    public void ConformalCoverage_FollowsItsBetaDistribution()
    {
        var random = new Random(40);
        var coverages = new double[4000];
        for (var repeat = 0; repeat < coverages.Length; repeat++)
        {
            // Scores uniform on 0 … 1: the factor is its own coverage.
            double[] scores = [.. Enumerable.Range(0, 200).Select(_ => random.NextDouble())];
            coverages[repeat] = ConformalQuantile.Of(scores, 0.95);
        }

        var mean = coverages.Average();
        Assert.Equal(191.0 / 201, mean, 0.001);
        Assert.Equal(0.0153, Math.Sqrt(coverages.Average(c => (c - mean) * (c - mean))), 0.001);
    }
}
