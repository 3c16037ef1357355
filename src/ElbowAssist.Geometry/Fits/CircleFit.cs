namespace ElbowAssist.Geometry.Fits;

/// <summary>
/// Circle through points of an outline: an algebraic start, then geometric least squares, minimising
/// Σ wᵢ(|xᵢ − centre| − radius)². With covariances wᵢ is the inverse of the variance across the outline as the start
/// sees it; the slip along the outline does not count. Whole circles and arcs alike.
/// </summary>
public static class CircleFit
{
    /// <summary>
    /// Smallest arc, in degrees from the first to the last point around the centre, from which a radius is reported:
    /// below it a radius error of half and more is usual at the spreads met here (choice of this project).
    /// </summary>
    public const double MinimumArcDegrees = 60;

    private const int MaximumIterations = 200;

    /// <summary>Fits a circle and its covariance.</summary>
    /// <param name="points">At least three points.</param>
    /// <param name="spread">One covariance per point, or empty for equal weights.</param>
    /// <returns>The estimate, or the reason why there is none. Never throws on the points' values.</returns>
    /// <exception cref="ArgumentException">The number of covariances is neither 0 nor that of the points.</exception>
    public static CircleEstimate Fit(ReadOnlySpan<Point> points, ReadOnlySpan<Covariance> spread)
    {
        if (!spread.IsEmpty && spread.Length != points.Length)
        {
            throw new ArgumentException($"{spread.Length} covariances for {points.Length} points.", nameof(spread));
        }

        foreach (var covariance in spread)
        {
            if (!covariance.IsValid)
            {
                return CircleEstimate.None(FitExit.NotFinite);
            }
        }

        var exit = AlgebraicCircle.Fit(points, out var start);
        if (!exit.HasEstimate())
        {
            return CircleEstimate.None(exit);
        }

        Span<double> weights = stackalloc double[spread.IsEmpty ? 0 : points.Length];
        Weights(start, points, spread, weights);
        exit = Near(start, points, weights, 1e-13, out var circle);
        if (!exit.HasEstimate())
        {
            return CircleEstimate.None(exit);
        }

        return ArcDegrees(circle.Centre, points) < MinimumArcDegrees
            ? CircleEstimate.None(FitExit.ArcTooShort)
            : WithSpread(circle, points, spread, weights, exit);
    }

    /// <summary>
    /// Fills the weight of each point, the inverse of its variance across the circle <paramref name="near"/>. Variances are
    /// floored at a millionth of the radius squared, so that a point without spread does not own the circle.
    /// </summary>
    public static void Weights(
        in Circle near, ReadOnlySpan<Point> points, ReadOnlySpan<Covariance> spread, Span<double> weights)
    {
        for (var i = 0; i < weights.Length; i++)
        {
            var across = spread[i].Along(points[i] - near.Centre);
            weights[i] = 1 / Math.Max(double.IsNaN(across) ? 0 : across, 1e-6 * near.Radius * near.Radius);
        }
    }

    /// <summary>
    /// The geometric least squares circle from a start close to it, without its covariance; allocates nothing. For
    /// repeated fits of slightly moved points.
    /// </summary>
    /// <param name="start">A circle close to the minimum.</param>
    /// <param name="points">At least three points.</param>
    /// <param name="weights">One weight per point, or empty for equal weights.</param>
    /// <param name="tolerance">Largest step at the end, as a fraction of the radius.</param>
    /// <param name="circle">The circle found.</param>
    public static FitExit Near(
        in Circle start, ReadOnlySpan<Point> points, ReadOnlySpan<double> weights, double tolerance, out Circle circle)
    {
        circle = start;
        if (points.Length < 3)
        {
            return FitExit.TooFewPoints;
        }

        if (Undamped(start, points, weights, tolerance, out circle))
        {
            return points.Length == 3 ? FitExit.Exact : FitExit.Converged;
        }

        circle = start;
        double a = start.Centre.X, b = start.Centre.Y, r = start.Radius;
        var damping = 0.0;
        var cost = Cost(a, b, r, points, weights);
        if (!double.IsFinite(cost))
        {
            return FitExit.NotFinite;
        }

        for (var iteration = 0; iteration < MaximumIterations; iteration++)
        {
            var normal = NormalEquations.At(a, b, r, points, weights);
            if (!normal.Solve(damping, out var da, out var db, out var dr))
            {
                return FitExit.Collinear;
            }

            var next = Cost(a + da, b + db, r + dr, points, weights);
            var step = Math.Abs(da) + Math.Abs(db) + Math.Abs(dr);
            if (step <= tolerance * r)
            {
                (a, b, r) = next <= cost ? (a + da, b + db, r + dr) : (a, b, r);
                circle = new Circle(new Point(a, b), r);
                return points.Length == 3 ? FitExit.Exact : FitExit.Converged;
            }

            if (!(next <= cost * (1 + 1e-12)) || r + dr <= 0)
            {
                damping = damping == 0 ? 1e-3 : damping * 10;
                if (damping > 1e12)
                {
                    circle = new Circle(new Point(a, b), r);
                    return FitExit.Converged;
                }

                continue;
            }

            (a, b, r, cost) = (a + da, b + db, r + dr, next);
            damping = damping < 1e-9 ? 0 : damping / 10;
            if (r > 1e6 * start.Radius)
            {
                return FitExit.Collinear;
            }
        }

        return FitExit.NotConverged;
    }

    // Close to the minimum plain Gauss-Newton steps shrink fast, and no cost need be watched; where they do not, damping must.
    private static bool Undamped(
        in Circle start, ReadOnlySpan<Point> points, ReadOnlySpan<double> weights, double tolerance, out Circle circle)
    {
        double a = start.Centre.X, b = start.Centre.Y, r = start.Radius;
        var last = 0.1 * r;
        circle = start;
        for (var iteration = 0; iteration < 20; iteration++)
        {
            var normal = NormalEquations.At(a, b, r, points, weights);
            if (!normal.SolveFor(normal.X, normal.Y, normal.R, out var da, out var db, out var dr))
            {
                return false;
            }

            var step = Math.Abs(da) + Math.Abs(db) + Math.Abs(dr);
            if (!(step <= 0.5 * last) && !(step <= tolerance * r))
            {
                return false;
            }

            (a, b, r, last) = (a + da, b + db, r + dr, step);
            if (step <= tolerance * r)
            {
                circle = new Circle(new Point(a, b), r);
                return true;
            }
        }

        return false;
    }

    /// <summary>Degrees of arc that points cover around a centre: 360 less the widest gap.</summary>
    public static double ArcDegrees(Point centre, ReadOnlySpan<Point> points)
    {
        Span<double> angles = stackalloc double[points.Length];
        for (var i = 0; i < points.Length; i++)
        {
            angles[i] = Math.Atan2(points[i].Y - centre.Y, points[i].X - centre.X);
        }

        angles.Sort();
        var widest = angles[0] + (2 * Math.PI) - angles[^1];
        for (var i = 1; i < angles.Length; i++)
        {
            widest = Math.Max(widest, angles[i] - angles[i - 1]);
        }

        return 360 - (widest * 180 / Math.PI);
    }

    private static double Cost(double a, double b, double r, ReadOnlySpan<Point> points, ReadOnlySpan<double> weights)
    {
        var sum = 0.0;
        for (var i = 0; i < points.Length; i++)
        {
            double x = points[i].X - a, y = points[i].Y - b;
            var d = Math.Sqrt((x * x) + (y * y)) - r;
            sum += (weights.IsEmpty ? 1 : weights[i]) * d * d;
        }

        return sum;
    }

    private static CircleEstimate WithSpread(
        in Circle circle, ReadOnlySpan<Point> points, ReadOnlySpan<Covariance> spread, ReadOnlySpan<double> weights, FitExit exit)
    {
        var normal = NormalEquations.At(circle.Centre.X, circle.Centre.Y, circle.Radius, points, weights);
        double xx = 0, xy = 0, yy = 0, rr = 0, rx = 0, ry = 0;
        var variance = spread.IsEmpty && points.Length > 3
            ? Cost(circle.Centre.X, circle.Centre.Y, circle.Radius, points, weights) / (points.Length - 3)
            : 0;
        for (var i = 0; i < points.Length; i++)
        {
            var across = (points[i] - circle.Centre).Unit;
            var size = spread.IsEmpty ? variance : spread[i].Along(across);
            var pull = (weights.IsEmpty ? 1 : weights[i]) * Math.Sqrt(size);
            normal.SolveFor(pull * across.X, pull * across.Y, pull, out var da, out var db, out var dr);
            xx += da * da;
            xy += da * db;
            yy += db * db;
            rr += dr * dr;
            rx += dr * da;
            ry += dr * db;
        }

        return new CircleEstimate(circle, new Covariance(xx, xy, yy), rr, rx, ry, exit);
    }
}
