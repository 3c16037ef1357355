using System.Runtime.CompilerServices;

namespace ElbowAssist.Geometry.Fits;

/// <summary>
/// Straight line through points with errors in both coordinates: minimises Σ ρ((n·xᵢ − c)² / nᵀΣᵢn) over the unit
/// normal n and the offset c, ρ being Huber's function. Without covariances all points weigh alike and the fit is the
/// orthogonal least squares line.
/// </summary>
public static class LineFit
{
    private const int MaximumIterations = 1000;

    /// <summary>Last step of the offset in standard deviations, over the last step of the direction in radians.</summary>
    private const double OffsetPerAngle = 100;

    /// <summary>Fits a line and its covariance.</summary>
    /// <param name="points">At least two points.</param>
    /// <param name="spread">One covariance per point, or empty for equal weights.</param>
    /// <param name="options">Huber threshold and model error.</param>
    /// <returns>The estimate, or the reason why there is none. Never throws on the points' values.</returns>
    /// <exception cref="ArgumentException">The number of covariances is neither 0 nor that of the points.</exception>
    public static LineEstimate Fit(ReadOnlySpan<Point> points, ReadOnlySpan<Covariance> spread, in LineFitOptions options)
    {
        if (!spread.IsEmpty && spread.Length != points.Length)
        {
            throw new ArgumentException($"{spread.Length} covariances for {points.Length} points.", nameof(spread));
        }

        foreach (var covariance in spread)
        {
            if (!covariance.IsValid)
            {
                return LineEstimate.None(FitExit.NotFinite);
            }
        }

        var exit = Orthogonal(points, out var line);
        if (!exit.HasEstimate())
        {
            return LineEstimate.None(exit);
        }

        if (spread.IsEmpty)
        {
            return WithResidualSpread(points, line, exit);
        }

        if (!HasSpread(points, spread, options))
        {
            return new LineEstimate(line, 0, 0, 0, exit);
        }

        exit = Near(line, points, spread, options, out line);
        return exit.HasEstimate() ? WithKnownSpread(points, spread, options, line, exit) : LineEstimate.None(exit);
    }

    /// <summary>
    /// The same minimum, started from a line close to it and without its covariance; allocates nothing. For repeated
    /// fits of slightly moved points.
    /// </summary>
    public static FitExit Near(
        in Line start, ReadOnlySpan<Point> points, ReadOnlySpan<Covariance> spread, in LineFitOptions options, out Line line)
    {
        if (points.Length <= 2 || !HasSpread(points, spread, options))
        {
            return Orthogonal(points, out line);
        }

        var origin = Mean(points);
        var angle = Math.Atan2(start.Direction.Y, start.Direction.X);
        var offset = start.Direction.Unit.Perpendicular.Dot(start.Point - origin);
        var floor = VarianceFloor(points);
        var (lastCost, stepO, stepA) = (double.PositiveInfinity, 0.0, 0.0);
        line = default;
        for (var iteration = 0; iteration < MaximumIterations; iteration++)
        {
            var (sine, cosine) = Math.SinCos(angle);
            double hOO = 0, hOA = 0, hAA = 0, gO = 0, gA = 0, cost = 0;
            for (var i = 0; i < points.Length; i++)
            {
                var term = Term(points[i] - origin, spread[i], sine, cosine, offset, options, floor);
                var w = HuberWeight(term.Residual, options.HuberThreshold);
                hOO += w * term.ByOffset * term.ByOffset;
                hOA += w * term.ByOffset * term.ByAngle;
                hAA += w * term.ByAngle * term.ByAngle;
                gO += w * term.ByOffset * term.Residual;
                gA += w * term.ByAngle * term.Residual;
                cost += HuberCost(term.Residual, options.HuberThreshold);
            }

            if (cost > lastCost * (1 + 1e-12))
            {
                // Reweighting overshot: half the way back.
                (stepO, stepA) = (stepO / 2, stepA / 2);
                (offset, angle) = (offset - stepO, angle - stepA);
            }
            else
            {
                var determinant = (hOO * hAA) - (hOA * hOA);
                if (!(determinant > 0) || !double.IsFinite(determinant))
                {
                    return double.IsNaN(determinant) ? FitExit.NotFinite : FitExit.NoDirection;
                }

                lastCost = cost;
                stepO = -((hAA * gO) - (hOA * gA)) / determinant;
                stepA = Math.Clamp(-((hOO * gA) - (hOA * gO)) / determinant, -0.5, 0.5);
                (offset, angle) = (offset + stepO, angle + stepA);
            }

            // Reweighting creeps where a point sits on Huber's threshold; what it still gains there is far below any spread.
            var tolerance = iteration < MaximumIterations - 1 ? options.Tolerance : 1e-6;
            if (Math.Abs(stepA) < tolerance && Math.Abs(stepO) * Math.Sqrt(hOO) < tolerance * OffsetPerAngle)
            {
                var direction = new Vector(Math.Cos(angle), Math.Sin(angle));
                line = Oriented(origin + (direction.Perpendicular * offset), direction, points);
                return FitExit.Converged;
            }
        }

        return FitExit.NotConverged;
    }

    /// <summary>The orthogonal least squares line, all points weighing alike; allocates nothing.</summary>
    public static FitExit Orthogonal(ReadOnlySpan<Point> points, out Line line)
    {
        line = default;
        if (points.Length < 2)
        {
            return FitExit.TooFewPoints;
        }

        var origin = Mean(points);
        if (!origin.IsFinite)
        {
            return FitExit.NotFinite;
        }

        double xx = 0, xy = 0, yy = 0;
        foreach (var point in points)
        {
            var d = point - origin;
            xx += d.X * d.X;
            xy += d.X * d.Y;
            yy += d.Y * d.Y;
        }

        var scatter = xx + yy;
        var magnitude = 1 + Math.Abs(origin.X) + Math.Abs(origin.Y);
        if (scatter <= 1e-24 * magnitude * magnitude)
        {
            return FitExit.Coincident;
        }

        var (difference, twice) = (xx - yy, 2 * xy);
        if (Math.Sqrt((difference * difference) + (twice * twice)) <= 1e-9 * scatter)
        {
            return FitExit.NoDirection;
        }

        var angle = Math.Atan2(twice, difference) / 2;
        line = Oriented(origin, new Vector(Math.Cos(angle), Math.Sin(angle)), points);
        return points.Length == 2 ? FitExit.Exact : FitExit.Converged;
    }

    private static LineEstimate WithResidualSpread(ReadOnlySpan<Point> points, in Line line, FitExit exit)
    {
        if (exit == FitExit.Exact)
        {
            return new LineEstimate(line, 0, 0, 0, exit);
        }

        double along = 0, across = 0;
        foreach (var point in points)
        {
            var t = line.Direction.Dot(point - line.Point);
            var r = line.SignedDistanceTo(point);
            along += t * t;
            across += r * r;
        }

        var variance = across / (points.Length - 2);
        return new LineEstimate(line, variance / points.Length, variance / along, 0, exit);
    }

    // Sandwich with known filling: the scores' variance comes from the given covariances and the model error, not from
    // the residuals, of which three points leave only one.
    private static LineEstimate WithKnownSpread(
        ReadOnlySpan<Point> points, ReadOnlySpan<Covariance> spread, in LineFitOptions options, in Line line, FitExit exit)
    {
        var floor = VarianceFloor(points);
        var u = line.Direction.Unit;
        double hOO = 0, hOA = 0, hAA = 0, mOO = 0, mOA = 0, mAA = 0;
        for (var i = 0; i < points.Length; i++)
        {
            var term = Term(points[i] - line.Point, spread[i], u.Y, u.X, 0, options, floor);
            var w = HuberWeight(term.Residual, options.HuberThreshold);
            hOO += w * term.ByOffset * term.ByOffset;
            hOA += w * term.ByOffset * term.ByAngle;
            hAA += w * term.ByAngle * term.ByAngle;
            mOO += w * w * term.ByOffset * term.ByOffset;
            mOA += w * w * term.ByOffset * term.ByAngle;
            mAA += w * w * term.ByAngle * term.ByAngle;
        }

        var d = (hOO * hAA) - (hOA * hOA);
        double bOO = hAA / d, bOA = -hOA / d, bAA = hOO / d;
        var offset = (bOO * bOO * mOO) + (2 * bOO * bOA * mOA) + (bOA * bOA * mAA);
        var angle = (bOA * bOA * mOO) + (2 * bOA * bAA * mOA) + (bAA * bAA * mAA);
        var both = (bOO * bOA * mOO) + (((bOO * bAA) + (bOA * bOA)) * mOA) + (bOA * bAA * mAA);
        return new LineEstimate(line, offset, angle, both, exit);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static (double Residual, double ByOffset, double ByAngle) Term(
        Vector x, in Covariance s, double sine, double cosine, double offset, in LineFitOptions options, double floor)
    {
        // n = (−sin, cos); dn/dangle = −u; the variance across the line turns with the line.
        var variance = (s.XX * sine * sine) - (2 * s.XY * sine * cosine) + (s.YY * cosine * cosine) +
            (options.ModelError * options.ModelError);
        var slope = 0.0;
        if (variance < floor)
        {
            variance = floor;
        }
        else
        {
            slope = -2 * (((s.YY - s.XX) * sine * cosine) + (s.XY * ((cosine * cosine) - (sine * sine))));
        }

        var sigma = Math.Sqrt(variance);
        var residual = (-sine * x.X) + (cosine * x.Y) - offset;
        var along = (cosine * x.X) + (sine * x.Y);
        return (residual / sigma, -1 / sigma, (-along / sigma) - (residual * slope / (2 * variance * sigma)));
    }

    private static double HuberWeight(double residual, double threshold)
    {
        var size = Math.Abs(residual);
        return size <= threshold ? 1 : threshold / size;
    }

    private static double HuberCost(double residual, double threshold)
    {
        var size = Math.Abs(residual);
        return size <= threshold ? size * size / 2 : threshold * (size - (threshold / 2));
    }

    private static bool HasSpread(ReadOnlySpan<Point> points, ReadOnlySpan<Covariance> spread, in LineFitOptions options)
    {
        if (spread.IsEmpty)
        {
            return false;
        }

        var largest = options.ModelError * options.ModelError;
        foreach (var covariance in spread)
        {
            largest = Math.Max(largest, covariance.XX + covariance.YY);
        }

        return largest > VarianceFloor(points);
    }

    // A point without any spread must not own the line, nor divide by zero.
    private static double VarianceFloor(ReadOnlySpan<Point> points)
    {
        var size = 0.0;
        foreach (var point in points)
        {
            var d = point - points[0];
            size = Math.Max(size, d.Dot(d));
        }

        return 1e-12 * size;
    }

    private static Line Oriented(Point point, Vector direction, ReadOnlySpan<Point> points) =>
        new(point, direction.Dot(points[^1] - points[0]) < 0 ? -direction : direction);

    private static Point Mean(ReadOnlySpan<Point> points)
    {
        double x = 0, y = 0;
        foreach (var point in points)
        {
            x += point.X;
            y += point.Y;
        }

        return new Point(x / points.Length, y / points.Length);
    }
}
