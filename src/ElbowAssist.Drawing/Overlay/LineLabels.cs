using ElbowAssist.Drawing.Marks;
using ElbowAssist.Geometry;

namespace ElbowAssist.Drawing.Overlay;

/// <summary>Words beside the ends of lines, off the bones and off each other.</summary>
internal sealed class LineLabels(FilmScale scale, IReadOnlyList<Region> bones, IReadOnlyList<Point> places)
{
    private readonly List<Box> taken = [];

    /// <summary>Keeps words off a place that is taken already.</summary>
    public void Keep(Point at, double width, double height) => taken.Add(new Box(at.X, at.Y - height, width, height * 1.3));

    /// <summary>The best place for words on a line, or null if there is none on the film.</summary>
    public Words? Place(string text, LineMarks line, double size)
    {
        var best = Candidates(text, line, size)
            .Where(c => c.Box.Left >= 0 && c.Box.Top >= 0 && c.Box.Left + c.Box.Width <= scale.Width && c.Box.Top + c.Box.Height <= scale.Height)
            .Select(c => (c.Box, c.At, Cost: c.Cost + Obstruction(c.Box)))
            .OrderBy(c => c.Cost)
            .Cast<(Box Box, Point At, double Cost)?>()
            .FirstOrDefault();
        if (best is not { } found)
        {
            return null;
        }

        taken.Add(found.Box);
        return new Words(found.At, text, size, line.Style.Ink);
    }

    private IEnumerable<(Box Box, Point At, double Cost)> Candidates(string text, LineMarks line, double size)
    {
        if (line.Runs.Count == 0)
        {
            yield break;
        }

        var (width, margin) = (Words.WidthOf(text, size), 4 * scale.Unit);
        double first = line.Runs[0].From, last = line.Runs[^1].To;
        foreach (var (end, inward) in new[] { (first, 1.0), (last, -1.0) })
        {
            for (var i = 0; i < 8; i++)
            {
                var t = end + (inward * i * 1.2 * size);
                var p = line.Line.Point + (line.Line.Direction * t);
                foreach (var away in new[] { -0.6, 0.6, -2.4, 2.4, -4.2, 4.2, -6, 6 })
                {
                    var offset = line.Line.Direction.Perpendicular * (away * size);
                    var anchor = p + offset;
                    var left = Math.Abs(offset.X) > Math.Abs(offset.Y) ? (offset.X < 0 ? anchor.X - width : anchor.X) : anchor.X - (inward * line.Line.Direction.X > 0 ? 0 : width);
                    left = Math.Clamp(left, margin, Math.Max(margin, scale.Width - width - margin));
                    var baseline = Math.Abs(offset.X) > Math.Abs(offset.Y) ? anchor.Y + (0.35 * size) : (offset.Y < 0 ? anchor.Y : anchor.Y + (0.8 * size));
                    yield return (new Box(left, baseline - size, width, 1.3 * size), new Point(left, baseline), i + Math.Abs(away));
                }
            }
        }
    }

    private double Obstruction(Box box)
    {
        var cost = taken.Any(box.Overlaps) ? 1000.0 : 0;
        for (var i = 0; i <= 8; i++)
        {
            for (var j = 0; j <= 2; j++)
            {
                var p = new Point(box.Left + (box.Width * i / 8), box.Top + (box.Height * j / 2));
                cost += bones.Any(b => b.Holds(p)) ? 8 : 0;
            }
        }

        return cost + (5 * places.Count(box.Holds));
    }

    private readonly record struct Box(double Left, double Top, double Width, double Height)
    {
        public bool Overlaps(Box other) =>
            Left < other.Left + other.Width && other.Left < Left + Width && Top < other.Top + other.Height && other.Top < Top + Height;

        public bool Holds(Point p) => p.X >= Left && p.X <= Left + Width && p.Y >= Top && p.Y <= Top + Height;
    }
}
