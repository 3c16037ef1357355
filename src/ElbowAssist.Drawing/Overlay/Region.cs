using ElbowAssist.Geometry;

namespace ElbowAssist.Drawing.Overlay;

/// <summary>A part of the film.</summary>
internal abstract record Region
{
    public abstract bool Holds(Point point);
}

/// <summary>All within a distance of a centre.</summary>
internal sealed record Disk(Point Centre, double Radius) : Region
{
    public override bool Holds(Point point) => Centre.DistanceTo(point) < Radius;
}

/// <summary>All within a distance of a broken line.</summary>
internal sealed record Along(IReadOnlyList<Point> Points, double Distance) : Region
{
    public override bool Holds(Point point)
    {
        for (var i = 1; i < Points.Count; i++)
        {
            if (DistanceToSegment(Points[i - 1], Points[i], point) < Distance)
            {
                return true;
            }
        }

        return false;
    }

    private static double DistanceToSegment(Point a, Point b, Point p)
    {
        var along = b - a;
        var share = Math.Clamp((p - a).Dot(along) / Math.Max(along.Dot(along), double.Epsilon), 0, 1);
        return p.DistanceTo(a + (along * share));
    }
}

/// <summary>A strip along the part of a circle that faces a direction.</summary>
internal sealed record FacingRim(Point Centre, double Radius, Vector Facing, double HalfWidth, double HalfAngleDegrees) : Region
{
    public override bool Holds(Point point)
    {
        var ray = point - Centre;
        return Math.Abs(ray.Length - Radius) < HalfWidth &&
            ray.Unit.Dot(Facing.Unit) > Math.Cos(HalfAngleDegrees * Math.PI / 180);
    }
}

/// <summary>The inside of a polygon.</summary>
internal sealed record Inside(IReadOnlyList<Point> Corners) : Region
{
    public override bool Holds(Point point)
    {
        var inside = false;
        for (int i = 0, j = Corners.Count - 1; i < Corners.Count; j = i++)
        {
            Point a = Corners[i], b = Corners[j];
            if (a.Y > point.Y != b.Y > point.Y && point.X < ((b.X - a.X) * (point.Y - a.Y) / (b.Y - a.Y)) + a.X)
            {
                inside = !inside;
            }
        }

        return inside;
    }
}
