using ElbowAssist.Geometry;

namespace ElbowAssist.Drawing.Overlay;

/// <summary>The stretches of a line that may be drawn.</summary>
internal static class VisibleRuns
{
    /// <summary>Stretches as distances along the unit direction from the line's point, in ascending order.</summary>
    /// <param name="line">The line; its direction has length 1.</param>
    /// <param name="from">Start of the span.</param>
    /// <param name="to">End of the span.</param>
    /// <param name="step">Resolution.</param>
    /// <param name="shortest">Shorter stretches are left out.</param>
    /// <param name="mayShow">Whether a place may be drawn over.</param>
    public static IReadOnlyList<(double From, double To)> Of(Line line, double from, double to, double step, double shortest, Func<Point, bool> mayShow)
    {
        var runs = new List<(double From, double To)>();
        double? start = null;
        for (var t = from; t <= to + step; t += step)
        {
            var shown = t <= to && mayShow(line.Point + (line.Direction * t));
            if (shown)
            {
                start ??= t;
            }
            else if (start is { } s)
            {
                if (t - step - s >= shortest)
                {
                    runs.Add((s, t - step));
                }

                start = null;
            }
        }

        return runs;
    }

    /// <summary>The span over which the places project on a line, widened by a pad.</summary>
    public static (double From, double To) Span(Line line, IEnumerable<Point> places, double pad)
    {
        var along = places.Select(p => line.Direction.Dot(p - line.Point)).ToList();
        return (along.Min() - pad, along.Max() + pad);
    }
}
