using ElbowAssist.Drawing.Marks;
using ElbowAssist.Geometry;
using ElbowAssist.Reading;

namespace ElbowAssist.Drawing.Overlay;

/// <summary>A fitted circle, thin, open where the joint is.</summary>
internal static class CircleMarks
{
    private const int Steps = 180;

    public static IReadOnlyList<Mark> Of(NamedCircle circle, Ink ink, FilmScale scale, IReadOnlyList<Region> scrutiny)
    {
        var unit = scale.Unit;
        IReadOnlyList<double> dashes = ink == Ink.Reader ? [] : [5 * unit, 5 * unit];
        var arc = new List<Point>();
        var marks = new List<Mark>();
        for (var i = 0; i <= Steps; i++)
        {
            var (sine, cosine) = Math.SinCos(2 * Math.PI * i / Steps);
            var p = circle.Centre + new Vector(circle.Radius * cosine, circle.Radius * sine);
            if (scale.Holds(p) && !scrutiny.Any(r => r.Holds(p)))
            {
                arc.Add(p);
                continue;
            }

            Close();
        }

        Close();
        var arm = 5 * unit;
        marks.Add(new Stroke([circle.Centre - new Vector(arm, 0), circle.Centre + new Vector(arm, 0)], ink, unit, []));
        marks.Add(new Stroke([circle.Centre - new Vector(0, arm), circle.Centre + new Vector(0, arm)], ink, unit, []));
        return marks;

        void Close()
        {
            if (arc.Count > 2)
            {
                marks.Add(new Stroke([.. arc], ink, unit, dashes));
            }

            arc.Clear();
        }
    }
}
