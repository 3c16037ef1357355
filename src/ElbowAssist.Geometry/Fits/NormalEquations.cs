namespace ElbowAssist.Geometry.Fits;

/// <summary>
/// Normal equations of the geometric circle fit in centre x, centre y and radius. Written out for three unknowns: they
/// are solved some ten thousand times per film, and a general solver would allocate each time.
/// </summary>
internal readonly record struct NormalEquations(
    double XX, double XY, double XR, double YY, double YR, double RR, double X, double Y, double R)
{
    public static NormalEquations At(
        double a, double b, double r, ReadOnlySpan<Point> points, ReadOnlySpan<double> weights)
    {
        double xx = 0, xy = 0, xr = 0, yy = 0, yr = 0, rr = 0, gx = 0, gy = 0, gr = 0;
        for (var i = 0; i < points.Length; i++)
        {
            double x = points[i].X - a, y = points[i].Y - b;
            var distance = Math.Sqrt((x * x) + (y * y));
            if (distance == 0)
            {
                continue;
            }

            var w = weights.IsEmpty ? 1 : weights[i];
            double ux = x / distance, uy = y / distance, d = distance - r;
            xx += w * ux * ux;
            xy += w * ux * uy;
            xr += w * ux;
            yy += w * uy * uy;
            yr += w * uy;
            rr += w;
            gx += w * ux * d;
            gy += w * uy * d;
            gr += w * d;
        }

        return new NormalEquations(xx, xy, xr, yy, yr, rr, gx, gy, gr);
    }

    public bool Solve(double damping, out double da, out double db, out double dr)
    {
        var damped = damping == 0 ? this : this with { XX = XX * (1 + damping), YY = YY * (1 + damping), RR = RR * (1 + damping) };
        return damped.SolveFor(X, Y, R, out da, out db, out dr);
    }

    public bool SolveFor(double x, double y, double r, out double da, out double db, out double dr)
    {
        var c00 = (YY * RR) - (YR * YR);
        var c01 = (XR * YR) - (XY * RR);
        var c02 = (XY * YR) - (XR * YY);
        var c11 = (XX * RR) - (XR * XR);
        var c12 = (XY * XR) - (XX * YR);
        var c22 = (XX * YY) - (XY * XY);
        var determinant = (XX * c00) + (XY * c01) + (XR * c02);
        da = ((c00 * x) + (c01 * y) + (c02 * r)) / determinant;
        db = ((c01 * x) + (c11 * y) + (c12 * r)) / determinant;
        dr = ((c02 * x) + (c12 * y) + (c22 * r)) / determinant;
        return determinant > 1e-14 * RR * RR * RR && double.IsFinite(da + db + dr);
    }
}
