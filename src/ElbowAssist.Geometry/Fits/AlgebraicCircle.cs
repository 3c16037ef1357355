namespace ElbowAssist.Geometry.Fits;

/// <summary>
/// Taubin's algebraic circle (IEEE Trans Pattern Anal Mach Intell 1991;13:1115–38), found by Newton's method on its
/// characteristic polynomial as in Chernov N, Circular and Linear Regression, CRC Press 2010, chapter 5. It favours no
/// small radii on short arcs, which makes it a good start for the geometric fit.
/// </summary>
internal static class AlgebraicCircle
{
    public static FitExit Fit(ReadOnlySpan<Point> points, out Circle circle)
    {
        circle = default;
        if (points.Length < 3)
        {
            return FitExit.TooFewPoints;
        }

        double meanX = 0, meanY = 0;
        foreach (var point in points)
        {
            meanX += point.X / points.Length;
            meanY += point.Y / points.Length;
        }

        if (!double.IsFinite(meanX) || !double.IsFinite(meanY))
        {
            return FitExit.NotFinite;
        }

        double xx = 0, yy = 0, xy = 0, xz = 0, yz = 0, zz = 0;
        foreach (var point in points)
        {
            double x = point.X - meanX, y = point.Y - meanY;
            var z = (x * x) + (y * y);
            xx += x * x / points.Length;
            yy += y * y / points.Length;
            xy += x * y / points.Length;
            xz += x * z / points.Length;
            yz += y * z / points.Length;
            zz += z * z / points.Length;
        }

        var mz = xx + yy;
        var magnitude = 1 + Math.Abs(meanX) + Math.Abs(meanY);
        if (mz <= 1e-24 * magnitude * magnitude)
        {
            return FitExit.Coincident;
        }

        var covariance = (xx * yy) - (xy * xy);
        if (covariance <= 1e-14 * mz * mz)
        {
            return FitExit.Collinear;
        }

        var a3 = 4 * mz;
        var a2 = (-3 * mz * mz) - zz;
        var variance = zz - (mz * mz);
        var a1 = (variance * mz) + (4 * covariance * mz) - (xz * xz) - (yz * yz);
        var a0 = (xz * ((xz * yy) - (yz * xy))) + (yz * ((yz * xx) - (xz * xy))) - (variance * covariance);
        double root = 0, value = a0;
        for (var iteration = 0; iteration < 60; iteration++)
        {
            var slope = a1 + (root * ((2 * a2) + (3 * a3 * root)));
            var next = root - (value / slope);
            if (next == root || !double.IsFinite(next))
            {
                break;
            }

            var nextValue = a0 + (next * (a1 + (next * (a2 + (next * a3)))));
            if (Math.Abs(nextValue) >= Math.Abs(value))
            {
                break;
            }

            (root, value) = (next, nextValue);
        }

        var determinant = (root * root) - (root * mz) + covariance;
        var centreX = ((xz * (yy - root)) - (yz * xy)) / determinant / 2;
        var centreY = ((yz * (xx - root)) - (xz * xy)) / determinant / 2;
        var radius = Math.Sqrt((centreX * centreX) + (centreY * centreY) + mz);
        if (!double.IsFinite(radius))
        {
            return FitExit.Collinear;
        }

        circle = new Circle(new Point(centreX + meanX, centreY + meanY), radius);
        return points.Length == 3 ? FitExit.Exact : FitExit.Converged;
    }
}
