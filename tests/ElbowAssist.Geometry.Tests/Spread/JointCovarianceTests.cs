using CsCheck;
using ElbowAssist.Geometry.Spread;
using MathNet.Numerics.LinearAlgebra;

namespace ElbowAssist.Geometry.Tests.Spread;

public sealed class JointCovarianceTests
{
    [Fact]
    public void NotACovariance_IsToldInASentence()
    {
        Assert.Contains("4 entries", Problem(1, [1, 0, 1]), StringComparison.Ordinal);
        Assert.Contains("not symmetric", Problem(1, [1, 0.5, 0.2, 1]), StringComparison.Ordinal);
        Assert.Contains("not a finite number", Problem(1, [double.NaN, 0, 0, 1]), StringComparison.Ordinal);
        Assert.Contains("negative variance", Problem(1, [1, 2, 2, 1]), StringComparison.Ordinal);
        Assert.Contains("negative variance", Problem(1, [0, 1, 1, 5]), StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => JointCovariance.Independent([new Covariance(-1, 0, 1)]));
    }

    [Fact]
    public void RandomSemidefiniteMatrices_AreTaken_AndRandomIndefiniteOnesAreNot() =>
        Gen.Select(Gen.Int[1, 6], Gen.Int[1, 12], Gen.Int).Sample(
            (count, rank, seed) =>
            {
                var random = new Random(seed);
                var root = Matrix<double>.Build.Dense(2 * count, rank, (_, _) => random.NextDouble() - 0.5);
                var good = root * root.Transpose();
                Assert.True(JointCovariance.TryCreate(count, Rows(good), out var joint, out var problem), problem);

                // MathNet's eigenvalues are the referee of the matrix made indefinite.
                var bad = good - (0.3 * Matrix<double>.Build.DenseIdentity(2 * count));
                var smallest = bad.Evd(Symmetricity.Symmetric).EigenValues.Min(e => e.Real);
                Assert.True(Math.Abs(smallest) < 1e-3 || smallest > 0 == JointCovariance.TryCreate(count, Rows(bad), out _, out _));
                Assert.Equal(good[0, 1], joint!.Of(0).XY, 1e-12);
            },
            iter: 2000);

    [Fact]
    public void Midpoint_ScalingAndSelection_ByHand()
    {
        double[] matrix =
        [
            4, 1, 2, 0,
            1, 3, 0, 1,
            2, 0, 6, 2,
            0, 1, 2, 5,
        ];
        Assert.True(JointCovariance.TryCreate(2, matrix, out var joint, out _));
        Assert.Equal(new Covariance((4 + 6 + (2 * 2)) / 4.0, (1 + 2 + 0 + 0) / 4.0, (3 + 5 + (2 * 1)) / 4.0), joint.OfMidpoint(0, 1));
        Assert.Equal(2 * 3 * 3, joint.Scaled(3, 10)[0, 2]);
        Assert.Equal(1 * 10 * 10, joint.Scaled(3, 10)[1, 3]);
        Assert.Equal(2 * 10 * 3, joint.Scaled(3, 10)[3, 2]);
        Assert.Equal(new Covariance(16, 4, 12), joint.Inflated(2).Of(0));
        var swapped = joint.Select([1, -1, 0]);
        Assert.Equal(new Covariance(6, 2, 5), swapped.Of(0));
        Assert.Equal(Covariance.Zero, swapped.Of(1));
        Assert.Equal(2, swapped[0, 4]);
    }

    [Fact]
    public void Draws_HaveTheCovarianceTheyAreDrawnFrom()
    {
        double[] matrix =
        [
            4, 1, 2, 0,
            1, 3, 0, 1,
            2, 0, 6, 2,
            0, 1, 2, 5,
        ];
        Assert.True(JointCovariance.TryCreate(2, matrix, out var joint, out _));
        Point[] points = [new(10, 20), new(-5, 7)];
        var drawn = Redraws.Of(
            points, joint, (p, v) => (v[0], v[1], v[2], v[3]) = (p[0].X - 10, p[0].Y - 20, p[1].X + 5, p[1].Y - 7), 4, 200_000, seed: 3);
        for (var i = 0; i < 4; i++)
        {
            for (var j = 0; j < 4; j++)
            {
                var sum = 0.0;
                for (var draw = 0; draw < drawn.Draws; draw++)
                {
                    sum += drawn.Of(i)[draw] * drawn.Of(j)[draw];
                }

                Assert.Equal(matrix[(4 * i) + j], sum / drawn.Draws, 0.08);
            }
        }
    }

    [Fact]
    public void Interval_OfANormal_IsItsQuantiles()
    {
        var one = JointCovariance.Independent([Covariance.Isotropic(2)]);
        var drawn = Redraws.Of([new Point(5, 0)], one, (p, v) => v[0] = p[0].X, 1, 100_000, seed: 11);
        var (low, high) = drawn.Interval(0, 0.95);
        Assert.Equal(5 - (2 * 1.959964), low, 0.05); // standard normal quantile 0.975
        Assert.Equal(5 + (2 * 1.959964), high, 0.05);
        Assert.Equal(drawn.Of(0).ToArray(), Redraws.Of([new Point(5, 0)], one, (p, v) => v[0] = p[0].X, 1, 100_000, seed: 11).Of(0).ToArray());
    }

    [Fact]
    public void ClosedForm_OfALinearFunction_IsExact()
    {
        var joint = JointCovariance.Independent([new Covariance(4, 1, 3), new Covariance(1, 0, 2)]);
        var deviations = DeltaMethod.StandardDeviations(
            [new Point(1, 2), new Point(3, 4)], joint, (p, v) => (v[0], v[1]) = ((2 * p[0].X) - p[0].Y + p[1].X, double.NaN), 2);
        Assert.Equal(Math.Sqrt((4 * 4) + 3 - (4 * 1) + 1), deviations[0], 1e-9);
        Assert.True(double.IsNaN(deviations[1]));
    }

    [Fact]
    public void UndefinedDraws_AreCounted()
    {
        var one = JointCovariance.Independent([Covariance.Isotropic(1)]);
        var drawn = Redraws.Of([new Point(0, 0)], one, (p, v) => v[0] = p[0].X < 0 ? double.NaN : p[0].X, 1, 1000, seed: 1);
        Assert.Equal(0.5, drawn.UndefinedShare(0)); // draws come in mirrored pairs
        Assert.True(drawn.Interval(0, 0.95).Low >= 0);
    }

    private static string Problem(int count, double[] matrix)
    {
        Assert.False(JointCovariance.TryCreate(count, matrix, out _, out var problem));
        return problem;
    }

    private static double[] Rows(Matrix<double> matrix) => matrix.ToRowMajorArray();
}
