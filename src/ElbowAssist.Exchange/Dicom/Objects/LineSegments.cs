using ElbowAssist.Geometry;
using ElbowAssist.Reading;

namespace ElbowAssist.Exchange.Dicom.Objects;

/// <summary>The stretch of a line shown on a film: where the landmarks are, with a margin, and on the film.</summary>
internal static class LineSegments
{
    // Common practice, no source: a little beyond the outermost landmark, so that the line can be followed by eye.
    private const double MarginShare = 0.08;

    /// <summary>Rectangle around all laid landmarks, widened and cut to the film.</summary>
    public static (Point TopLeft, Point BottomRight) Field(FilmReading reading)
    {
        var points = reading.Landmarks.Where(l => l.Position is not null).Select(l => l.Position!.Value).ToList();
        var film = new Point(reading.Image.Width, reading.Image.Height);
        if (points.Count < 2)
        {
            return (new Point(0, 0), film);
        }

        var (left, right) = (points.Min(p => p.X), points.Max(p => p.X));
        var (top, bottom) = (points.Min(p => p.Y), points.Max(p => p.Y));
        var margin = MarginShare * Math.Max(right - left, bottom - top);
        return (
            new Point(Math.Max(0, left - margin), Math.Max(0, top - margin)),
            new Point(Math.Min(film.X, right + margin), Math.Min(film.Y, bottom + margin)));
    }

    /// <summary>Both ends of a line within a rectangle, in the order of its direction, or null if it misses it.</summary>
    public static (Point From, Point To)? Within(NamedLine line, (Point TopLeft, Point BottomRight) field)
    {
        var (from, to) = (double.NegativeInfinity, double.PositiveInfinity);
        Cut(line.Point.X, line.Direction.X, field.TopLeft.X, field.BottomRight.X, ref from, ref to);
        Cut(line.Point.Y, line.Direction.Y, field.TopLeft.Y, field.BottomRight.Y, ref from, ref to);
        return to > from && double.IsFinite(from) && double.IsFinite(to)
            ? (line.Point + (line.Direction * from), line.Point + (line.Direction * to))
            : null;
    }

    private static void Cut(double origin, double step, double low, double high, ref double from, ref double to)
    {
        if (Math.Abs(step) < 1e-12)
        {
            if (origin < low || origin > high)
            {
                (from, to) = (1, 0);
            }

            return;
        }

        var (a, b) = ((low - origin) / step, (high - origin) / step);
        from = Math.Max(from, Math.Min(a, b));
        to = Math.Min(to, Math.Max(a, b));
    }
}
