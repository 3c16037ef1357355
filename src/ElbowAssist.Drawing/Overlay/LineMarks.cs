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
        var (from, to) = VisibleRuns.Span(laid, places.Of(LineStyle.SpanOf(line.Name)), 30 * unit);
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
