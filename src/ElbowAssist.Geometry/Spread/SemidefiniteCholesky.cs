using System.Globalization;

namespace ElbowAssist.Geometry.Spread;

/// <summary>
/// Cholesky factor of a symmetric matrix that may be singular: landmarks without position and errors shared by all points
/// give covariances of deficient rank, which the factorisations of numerical libraries reject.
/// </summary>
internal static class SemidefiniteCholesky
{
    /// <summary>Factorises, or says in one sentence why the matrix is no covariance.</summary>
    /// <param name="size">Rows of the matrix.</param>
    /// <param name="matrix">The matrix row by row.</param>
    /// <param name="factor">The lower triangle of the factor, row after row up to the diagonal.</param>
    public static string Factorise(int size, ReadOnlySpan<double> matrix, out double[] factor)
    {
        factor = new double[Row(size)];
        var largest = 0.0;
        for (var row = 0; row < size; row++)
        {
            for (var column = 0; column < size; column++)
            {
                var value = matrix[(row * size) + column];
                if (!double.IsFinite(value))
                {
                    return string.Create(CultureInfo.InvariantCulture, $"Entry ({row}, {column}) of the joint covariance is not a finite number.");
                }

                largest = Math.Max(largest, Math.Abs(value));
                var mirror = matrix[(column * size) + row];
                if (Math.Abs(value - mirror) > 1e-9 * (Math.Abs(value) + Math.Abs(mirror)) + 1e-300)
                {
                    return string.Create(CultureInfo.InvariantCulture, $"The joint covariance is not symmetric at ({row}, {column}).");
                }
            }
        }

        // Single-precision networks and repeated sums leave rounding of this size in honest covariances.
        var tolerance = 1e-7 * largest;
        for (var column = 0; column < size; column++)
        {
            var pivot = matrix[(column * size) + column] - Dot(factor, column, column, column);
            if (pivot < -tolerance)
            {
                return string.Create(CultureInfo.InvariantCulture, $"The joint covariance has a negative variance (seen at coordinate {column}).");
            }

            var root = pivot <= 1e-12 * largest ? 0 : Math.Sqrt(pivot);
            factor[Row(column) + column] = root;
            for (var row = column + 1; row < size; row++)
            {
                var rest = matrix[(row * size) + column] - Dot(factor, row, column, column);
                if (root > 0)
                {
                    factor[Row(row) + column] = rest / root;
                }
                else if (rest * rest > tolerance * (Math.Abs(matrix[(row * size) + row]) + tolerance))
                {
                    return string.Create(CultureInfo.InvariantCulture, $"The joint covariance has a negative variance (seen at coordinates {column} and {row}).");
                }
            }
        }

        return string.Empty;
    }

    /// <summary>Where a row of a lower triangle begins.</summary>
    public static int Row(int row) => row * (row + 1) / 2;

    private static double Dot(double[] factor, int a, int b, int length)
    {
        var first = factor.AsSpan(Row(a), length);
        var second = factor.AsSpan(Row(b), length);
        var sum = 0.0;
        for (var k = 0; k < first.Length; k++)
        {
            sum += first[k] * second[k];
        }

        return sum;
    }
}
