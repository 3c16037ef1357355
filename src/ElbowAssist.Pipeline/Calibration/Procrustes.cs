using ElbowAssist.Geometry;

namespace ElbowAssist.Pipeline.Calibration;

/// <summary>Lays one set of points onto another by the similarity of least squares, without mirroring.</summary>
public static class Procrustes
{
    /// <summary>The similarity, or null if the points coincide.</summary>
    public static Similarity? Onto(IReadOnlyList<Point> from, IReadOnlyList<Point> to)
    {
        ArgumentNullException.ThrowIfNull(from);
        ArgumentNullException.ThrowIfNull(to);
        var (a, b) = (Centre(from), Centre(to));
        double dot = 0, cross = 0, square = 0;
        for (var i = 0; i < from.Count; i++)
        {
            Vector p = from[i] - a, q = to[i] - b;
            dot += p.Dot(q);
            cross += p.Cross(q);
            square += p.Dot(p);
        }

        if (!(square > 0))
        {
            return null;
        }

        var linear = new Similarity(dot / square, cross / square, default, false);
        var moved = linear.Apply(a);
        return linear with { Shift = new Vector(b.X - moved.X, b.Y - moved.Y) };
    }

    private static Point Centre(IReadOnlyList<Point> points) => new(points.Average(p => p.X), points.Average(p => p.Y));
}
