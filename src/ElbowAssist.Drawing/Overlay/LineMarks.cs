using ElbowAssist.Drawing.Marks;
using ElbowAssist.Geometry;
using ElbowAssist.Reading;

namespace ElbowAssist.Drawing.Overlay;

/// <summary>A line of a reading, its redraw band, and where its words may stand.</summary>
/// <param name="Line">The line, direction of length 1.</param>
/// <param name="Style">How it looks.</param>
/// <param name="Runs">The stretches drawn, as distances along the direction.</param>
/// <param name="Marks">Band and strokes.</param>
internal sealed record LineMarks(Line Line, LineStyle Style, IReadOnlyList<(double From, double To)> Runs, IReadOnlyList<Mark> Marks)
{
    // 95 of 100 under a normal distribution.
    private const double RedrawFactor = 1.96;

    public static LineMarks Of(NamedLine line, LineStyle style, FilmScale scale, LaidPlaces places, Func<Point, bool> mayShow)
    {
        var unit = scale.Unit;
        var laid = new Line(line.Point, line.Direction.Unit);
        var (from, to) = VisibleRuns.Span(laid, Ends(line.Name, laid, places, unit), 30 * unit);
        var runs = VisibleRuns.Of(laid, from, to, unit, 10 * unit, p => scale.Holds(p) && mayShow(p));
        var marks = new List<Mark>();
        foreach (var (start, end) in runs)
        {
            if (line.Spread is { } spread)
            {
                marks.Add(new Band(BandAround(laid, start, end, spread), style.Ink));
            }
        }

        marks.AddRange(runs.Select(r => new Stroke(
            [laid.Point + (laid.Direction * r.From), laid.Point + (laid.Direction * r.To)],
            style.Ink,
            style.Width * unit,
            [.. style.Dashes.Select(d => d * unit)])));
        return new LineMarks(laid, style, runs, marks);
    }

    // An axis of an angle is drawn where its own landmarks lie, if these lie on it, and otherwise along the bone.
    private static IReadOnlyList<Point> Ends(string name, Line line, LaidPlaces places, double unit)
    {
        var along = places.Of(LineStyle.SpanOf(name));
        if (LineStyle.IsAlignment(name))
        {
            return along;
        }

        var on = along.Where(p => Math.Abs(line.SignedDistanceTo(p)) < 4 * unit).ToList();
        var (from, to) = VisibleRuns.Span(line, along, 0);
        return on.Count >= 2 && VisibleRuns.Span(line, on, 0) is var (first, last) && last - first > 0.3 * (to - from) ? on : along;
    }

    private static List<Point> BandAround(Line line, double from, double to, LineSpread spread)
    {
        const int Steps = 12;
        var normal = line.Direction.Perpendicular;
        var edges = Enumerable.Range(0, Steps + 1).Select(i =>
        {
            var t = from + ((to - from) * i / Steps);
            return (Centre: line.Point + (line.Direction * t), Half: normal * (RedrawFactor * spread.StandardDeviationAt(t)));
        }).ToList();
        return [.. edges.Select(e => e.Centre + e.Half), .. edges.AsEnumerable().Reverse().Select(e => e.Centre - e.Half)];
    }
}
