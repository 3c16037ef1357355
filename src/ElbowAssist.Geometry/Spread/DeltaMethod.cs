namespace ElbowAssist.Geometry.Spread;

/// <summary>
/// Spread in closed form: covariance of values as J·Σ·Jᵀ, J being their derivatives with respect to the coordinates at the
/// laid points, by central differences. Exact in the limit of small spread; the counterpart that <see cref="Redraws"/> is
/// held against.
/// </summary>
public static class DeltaMethod
{
    /// <summary>Standard deviation of each value; NaN where a value is undefined or has no derivative.</summary>
    /// <param name="points">The points as laid; NaN for a missing one.</param>
    /// <param name="spread">Their joint covariance.</param>
    /// <param name="function">The values.</param>
    /// <param name="valueCount">How many values the function writes.</param>
    /// <exception cref="ArgumentException">Points and covariance differ in number.</exception>
    public static double[] StandardDeviations(
        ReadOnlySpan<Point> points, JointCovariance spread, PointFunction function, int valueCount)
    {
        var jacobian = Jacobian(points, spread, function, valueCount);
        var result = new double[valueCount];
        for (var value = 0; value < valueCount; value++)
        {
            var variance = 0.0;
            for (var i = 0; i < spread.Size; i++)
            {
                for (var j = 0; j < spread.Size; j++)
                {
                    variance += jacobian[value, i] * spread[i, j] * jacobian[value, j];
                }
            }

            result[value] = Math.Sqrt(Math.Max(variance, 0));
            result[value] = double.IsNaN(variance) ? double.NaN : result[value];
        }

        return result;
    }

    /// <summary>Derivatives of the values (rows) with respect to x₁, y₁, x₂, … (columns); 0 for coordinates without spread.</summary>
    public static double[,] Jacobian(
        ReadOnlySpan<Point> points, JointCovariance spread, PointFunction function, int valueCount)
    {
        ArgumentNullException.ThrowIfNull(spread);
        ArgumentNullException.ThrowIfNull(function);
        if (spread.Count != points.Length)
        {
            throw new ArgumentException($"The covariance is of {spread.Count} points, not {points.Length}.", nameof(spread));
        }

        var jacobian = new double[valueCount, spread.Size];
        var moved = points.ToArray();
        double[] above = new double[valueCount], below = new double[valueCount];
        for (var i = 0; i < spread.Size; i++)
        {
            var deviation = Math.Sqrt(spread[i, i]);
            if (deviation == 0)
            {
                continue;
            }

            var (point, step) = (i / 2, 0.02 * deviation);
            var along = int.IsEvenInteger(i) ? new Vector(step, 0) : new Vector(0, step);
            moved[point] = points[point] + along;
            function(moved, above);
            moved[point] = points[point] - along;
            function(moved, below);
            moved[point] = points[point];
            for (var value = 0; value < valueCount; value++)
            {
                jacobian[value, i] = (above[value] - below[value]) / (2 * step);
            }
        }

        return jacobian;
    }
}
