using System.Globalization;

namespace ElbowAssist.Geometry.Spread;

/// <summary>
/// The joint covariance of n points: a symmetric, non-negative 2n×2n matrix in squared units of the coordinates, ordered
/// x₁, y₁, x₂, y₂, … Neighbouring landmarks err together, so that their 2×2 blocks alone overstate the spread of a line's
/// direction and understate that of its place. A point without position has rows of zeros.
/// </summary>
public sealed class JointCovariance
{
    // Lower triangles, row after row up to the diagonal.
    private readonly double[] entries;
    private readonly double[] factor;
    private readonly int[] firstEntry;

    private JointCovariance(int count, double[] entries, double[] factor)
    {
        Count = count;
        this.entries = entries;
        this.factor = factor;
        firstEntry = new int[2 * count];
        for (var row = 0; row < firstEntry.Length; row++)
        {
            var start = factor.AsSpan(SemidefiniteCholesky.Row(row), row + 1).IndexOfAnyExcept(0.0);
            firstEntry[row] = start < 0 ? row + 1 : start;
        }
    }

    /// <summary>Number of points.</summary>
    public int Count { get; }

    /// <summary>Number of coordinates, twice <see cref="Count"/>.</summary>
    public int Size => 2 * Count;

    /// <summary>Covariance of two coordinates, numbered from 0 in the order x₁, y₁, x₂, y₂, …</summary>
    public double this[int row, int column] => entries[row < column ? SemidefiniteCholesky.Row(column) + row : SemidefiniteCholesky.Row(row) + column];

    /// <summary>
    /// Lower triangular L with L·Lᵀ equal to this matrix: the part of a row up to its diagonal that follows its leading
    /// zeros, and the column where it starts.
    /// </summary>
    internal ReadOnlySpan<double> FactorRow(int row, out int start)
    {
        start = firstEntry[row];
        return factor.AsSpan(SemidefiniteCholesky.Row(row) + start, row + 1 - start);
    }

    /// <summary>Points that err independently of one another.</summary>
    /// <exception cref="ArgumentException">A covariance is negative in some direction or not finite.</exception>
    public static JointCovariance Independent(IReadOnlyList<Covariance> points)
    {
        ArgumentNullException.ThrowIfNull(points);
        var size = 2 * points.Count;
        var matrix = new double[size * size];
        for (var i = 0; i < points.Count; i++)
        {
            var (x, y) = (2 * i, (2 * i) + 1);
            matrix[(x * size) + x] = points[i].XX;
            matrix[(x * size) + y] = points[i].XY;
            matrix[(y * size) + x] = points[i].XY;
            matrix[(y * size) + y] = points[i].YY;
        }

        return TryCreate(points.Count, matrix, out var joint, out var problem)
            ? joint
            : throw new ArgumentException(problem, nameof(points));
    }

    /// <summary>Checks a matrix and wraps it.</summary>
    /// <param name="count">Number of points n.</param>
    /// <param name="matrix">4n² entries, row by row.</param>
    /// <param name="covariance">The covariance, if the matrix is one.</param>
    /// <param name="problem">Otherwise one sentence that says why not.</param>
    public static bool TryCreate(
        int count,
        ReadOnlySpan<double> matrix,
        [System.Diagnostics.CodeAnalysis.NotNullWhen(true)] out JointCovariance? covariance,
        out string problem)
    {
        covariance = null;
        var size = 2 * count;
        if (matrix.Length != size * size)
        {
            problem = string.Create(CultureInfo.InvariantCulture, $"A joint covariance of {count} points has {size * size} entries, not {matrix.Length}.");
            return false;
        }

        problem = SemidefiniteCholesky.Factorise(size, matrix, out var factor);
        if (problem.Length > 0)
        {
            return false;
        }

        var triangle = new double[SemidefiniteCholesky.Row(size)];
        for (var row = 0; row < size; row++)
        {
            matrix.Slice(row * size, row + 1).CopyTo(triangle.AsSpan(SemidefiniteCholesky.Row(row)));
        }

        covariance = new JointCovariance(count, triangle, factor);
        return true;
    }

    /// <summary>The covariance of one point.</summary>
    public Covariance Of(int point)
    {
        var (x, y) = (2 * point, (2 * point) + 1);
        return new Covariance(this[x, x], this[x, y], this[y, y]);
    }

    /// <summary>The covariance of the point halfway between two points.</summary>
    public Covariance OfMidpoint(int a, int b)
    {
        var (ax, ay, bx, by) = (2 * a, (2 * a) + 1, 2 * b, (2 * b) + 1);
        return new Covariance(
            (this[ax, ax] + this[bx, bx] + (2 * this[ax, bx])) / 4,
            (this[ax, ay] + this[bx, by] + this[ax, by] + this[bx, ay]) / 4,
            (this[ay, ay] + this[by, by] + (2 * this[ay, by])) / 4);
    }

    /// <summary>The covariance after scaling every x and every y by its factor, e.g. from pixels to millimetres.</summary>
    public JointCovariance Scaled(double scaleX, double scaleY) =>
        Transformed(i => int.IsEvenInteger(i) ? scaleX : scaleY);

    /// <summary>The covariance with all standard deviations multiplied by a factor.</summary>
    public JointCovariance Inflated(double factorOfSpread) => Transformed(_ => factorOfSpread);

    /// <summary>The covariance of some of the points, in the order given; −1 stands for a point without spread.</summary>
    public JointCovariance Select(IReadOnlyList<int> points)
    {
        ArgumentNullException.ThrowIfNull(points);
        var size = 2 * points.Count;
        var chosen = new double[size * size];
        for (var row = 0; row < size; row++)
        {
            for (var column = 0; column < size; column++)
            {
                var (i, j) = (points[row / 2], points[column / 2]);
                chosen[(row * size) + column] = i < 0 || j < 0 ? 0 : this[(2 * i) + (row % 2), (2 * j) + (column % 2)];
            }
        }

        return TryCreate(points.Count, chosen, out var joint, out var problem)
            ? joint
            : throw new InvalidOperationException(problem);
    }

    private JointCovariance Transformed(Func<int, double> scale)
    {
        var scaled = new double[entries.Length];
        var scaledFactor = new double[factor.Length];
        for (var row = 0; row < Size; row++)
        {
            for (var column = 0; column <= row; column++)
            {
                var at = SemidefiniteCholesky.Row(row) + column;
                scaled[at] = entries[at] * scale(row) * scale(column);
                scaledFactor[at] = factor[at] * scale(row);
            }
        }

        return new JointCovariance(Count, scaled, scaledFactor);
    }
}
