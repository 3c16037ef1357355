using System.Buffers;
using System.Numerics;
using MathNet.Numerics.Random;
using MathNet.Numerics.Statistics;

namespace ElbowAssist.Geometry.Spread;

/// <summary>
/// Values as they fall when points are laid again and again: seeded draws from the joint normal distribution around the
/// laid points. Draws come in pairs mirrored about the laid points, which halves the work and steadies the intervals.
/// Dispose it to let the next film have its memory; what it gave is not to be used afterwards.
/// </summary>
public sealed class Redraws : IDisposable
{
    private double[] values;
    private double[] ordered = [];

    private Redraws(double[] values, int draws)
    {
        this.values = values;
        Draws = draws;
    }

    /// <summary>Number of draws.</summary>
    public int Draws { get; }

    /// <summary>Draws points and computes the values of each draw.</summary>
    /// <param name="points">The points as laid; NaN for a missing one.</param>
    /// <param name="spread">Their joint covariance.</param>
    /// <param name="function">The values.</param>
    /// <param name="valueCount">How many values the function writes.</param>
    /// <param name="draws">Number of draws, rounded up to even.</param>
    /// <param name="seed">Seed; the same seed gives the same draws.</param>
    /// <exception cref="ArgumentException">Points and covariance differ in number.</exception>
    public static Redraws Of(
        ReadOnlySpan<Point> points, JointCovariance spread, PointFunction function, int valueCount, int draws, int seed)
    {
        ArgumentNullException.ThrowIfNull(spread);
        ArgumentNullException.ThrowIfNull(function);
        if (spread.Count != points.Length)
        {
            throw new ArgumentException($"The covariance is of {spread.Count} points, not {points.Length}.", nameof(spread));
        }

        draws += draws % 2;
        var source = new StandardNormals(new Xoshiro256StarStar(seed, threadSafe: false), spread.Size);
        var normals = new double[spread.Size];
        var shift = new Vector[points.Length];
        var moved = new Point[points.Length];
        var results = new double[valueCount];
        var all = ArrayPool<double>.Shared.Rent(valueCount * draws);
        for (var draw = 0; draw < draws; draw++)
        {
            var again = !int.IsEvenInteger(draw);
            if (!again)
            {
                source.Draw(normals);
                Shift(spread, normals, shift);
            }

            for (var i = 0; i < moved.Length; i++)
            {
                moved[i] = again ? points[i] - shift[i] : points[i] + shift[i];
            }

            function(moved, results);
            for (var value = 0; value < valueCount; value++)
            {
                all[(value * draws) + draw] = results[value];
            }
        }

        return new Redraws(all, draws);
    }

    /// <summary>All draws of a value, in the order drawn.</summary>
    public ReadOnlySpan<double> Of(int value) => values.AsSpan(value * Draws, Draws);

    /// <summary>Share of draws, 0 to 1, in which a value was not defined.</summary>
    public double UndefinedShare(int value)
    {
        var undefined = 0;
        foreach (var draw in Of(value))
        {
            undefined += double.IsFinite(draw) ? 0 : 1;
        }

        return (double)undefined / Draws;
    }

    /// <summary>
    /// The interval between the quantiles that leave equal shares on both sides; NaN if no draw defined the value. The
    /// quantile p of n draws is the order statistic p(n + 1), so that a further draw falls inside with the stated share.
    /// </summary>
    /// <param name="value">Number of the value.</param>
    /// <param name="coverage">Share inside, e.g. 0.95.</param>
    public (double Low, double High) Interval(int value, double coverage)
    {
        var defined = Defined(value);
        return defined.Length == 0
            ? (double.NaN, double.NaN)
            : (Quantile(defined, (1 - coverage) / 2), Quantile(defined, (1 + coverage) / 2));
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        if (values.Length > 0)
        {
            ArrayPool<double>.Shared.Return(values);
            values = [];
        }
    }

    /// <summary>The draws that define a value, in an array that the next value uses again.</summary>
    private double[] Defined(int value)
    {
        var draws = Of(value);
        var count = 0;
        foreach (var draw in draws)
        {
            count += double.IsNaN(draw) ? 0 : 1;
        }

        if (ordered.Length != count)
        {
            ordered = new double[count];
        }

        var next = 0;
        foreach (var draw in draws)
        {
            if (!double.IsNaN(draw))
            {
                ordered[next++] = draw;
            }
        }

        return ordered;
    }

    // Four order statistics are found far faster than all of them are sorted; the order of the draws is lost.
    private static double Quantile(double[] defined, double probability)
    {
        var position = Math.Clamp((probability * (defined.Length + 1)) - 1, 0, defined.Length - 1);
        var below = Math.Min((int)position, defined.Length - 2);
        if (below < 0)
        {
            return defined[0];
        }

        var lower = ArrayStatistics.OrderStatisticInplace(defined, below + 1);
        var upper = ArrayStatistics.OrderStatisticInplace(defined, below + 2);
        return lower + ((position - below) * (upper - lower));
    }

    private static void Shift(JointCovariance spread, double[] normals, Vector[] shift)
    {
        for (var i = 0; i < shift.Length; i++)
        {
            shift[i] = new Vector(RowTimes(spread, 2 * i, normals), RowTimes(spread, (2 * i) + 1, normals));
        }
    }

    private static double RowTimes(JointCovariance spread, int row, double[] normals)
    {
        // Landmarks that err independently leave rows of one or two numbers.
        var factor = spread.FactorRow(row, out var start);
        var length = factor.Length;
        var numbers = normals.AsSpan(start, length);
        var sums = Vector<double>.Zero;
        var k = 0;
        for (; k + Vector<double>.Count <= length; k += Vector<double>.Count)
        {
            sums += new Vector<double>(factor[k..]) * new Vector<double>(numbers[k..]);
        }

        var sum = System.Numerics.Vector.Sum(sums);
        for (; k < length; k++)
        {
            sum += factor[k] * numbers[k];
        }

        return sum;
    }
}
