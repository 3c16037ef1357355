using System.Globalization;
using ElbowAssist.Anatomy;
using ElbowAssist.Phantom.Exposure.Annotations;
using ElbowAssist.Phantom.Exposure.Settings;
using ElbowAssist.Phantom.Rendering;
using ElbowAssist.Phantom.Sampling;

namespace ElbowAssist.Phantom.Exposure.Sampling;

/// <summary>Draws markers and burned-in text; all of it invented.</summary>
internal static class AnnotationSampler
{
    private const int Tries = 8;

    public static IReadOnlyList<Annotation> Sample(CounterRandom r, FilmContent content, FieldSettings field)
    {
        var signs = new List<Annotation>();
        if (content.Side != Side.Unknown && r.Chance(0.75))
        {
            var text = (content.Side == Side.Left ? "L" : "R") + (r.Chance(0.25) ? "°" : r.Chance(0.15) ? " 7" : string.Empty);
            signs.Add(Placed(r, content, field, signs, new Annotation(
                text, AnnotationKind.Lead, 0, 0, r.Uniform(0.025, 0.06), Turn(r), r.Chance(0.12), r.Uniform(0.1, 0.22), 1)));
        }

        var view = content.View switch
        {
            View.Lateral => "LAT",
            View.Ap => "AP",
            _ => "OBL",
        };
        AddText(r, content, field, signs, 0.22, view);
        AddText(r, content, field, signs, 0.12, r.Chance(0.5) ? Clock(r) : Number(r));
        AddText(r, content, field, signs, 0.05, r.Chance(0.6) ? ">" : "+");
        AddText(r, content, field, signs, 0.05, "||||||");
        return signs;
    }

    private static void AddText(
        CounterRandom r, FilmContent content, FieldSettings field, List<Annotation> signs, double chance, string text)
    {
        var kind = r.Chance(0.15) ? AnnotationKind.Boxed : AnnotationKind.BurnedIn;
        var sign = Placed(r, content, field, signs, new Annotation(
            text, kind, 0, 0, r.Uniform(0.014, 0.035), r.Chance(0.85) ? 0 : Turn(r), false, r.Uniform(0.09, 0.17), r.Chance(0.85) ? r.Uniform(0.75, 1) : r.Uniform(0, 0.2)));
        if (r.Chance(chance))
        {
            signs.Add(sign);
        }
    }

    /// <summary>The place near the edge of the field, of a few drawn, that covers the least bone and no other sign.</summary>
    private static Annotation Placed(
        CounterRandom r, FilmContent content, FieldSettings field, List<Annotation> others, Annotation sign)
    {
        var best = sign;
        var least = double.MaxValue;
        var (sine, cosine) = Math.SinCos(field.TurnDegrees * Math.PI / 180);
        for (var i = 0; i < Tries; i++)
        {
            double u = r.Uniform(-0.88, 0.88), v = r.Uniform(-0.88, 0.88);
            if (r.Chance(0.5))
            {
                u = r.Chance(0.5) ? 0.85 : -0.85;
            }
            else
            {
                v = r.Chance(0.5) ? 0.85 : -0.85;
            }

            var x = field.CentreX + (u * field.HalfWidth * cosine) - (v * field.HalfHeight * sine);
            var y = field.CentreY + (u * field.HalfWidth * sine) + (v * field.HalfHeight * cosine);
            var reach = Reach(sign);
            var hidden = BoneUnder(content.Paths, x, y, reach);
            hidden += others.Any(o => Math.Max(Math.Abs(o.X - x), Math.Abs(o.Y - y)) < reach + Reach(o)) ? 1e4 : 0;
            if (hidden < least)
            {
                least = hidden;
                best = sign with { X = x, Y = y };
            }
        }

        return best;
    }

    private static double Reach(Annotation sign) => sign.Height * (0.6 + (0.5 * sign.Text.Length));

    private static double BoneUnder(PathImage paths, double x, double y, double reach)
    {
        var longer = Math.Max(paths.Width, paths.Height);
        var cx = (paths.Width / 2.0) + (x * longer);
        var cy = (paths.Height / 2.0) + (y * longer);
        if (cx < 0 || cy < 0 || cx >= paths.Width || cy >= paths.Height)
        {
            return 1e6;
        }

        var sum = 0.0;
        for (var i = -2; i <= 2; i++)
        {
            for (var j = -2; j <= 2; j++)
            {
                var px = (int)Math.Clamp(cx + (i * reach * longer / 2), 0, paths.Width - 1);
                var py = (int)Math.Clamp(cy + (j * reach * longer / 2), 0, paths.Height - 1);
                sum += paths.Bone[(py * paths.Width) + px];
            }
        }

        return sum;
    }

    private static double Turn(CounterRandom r) => r.Chance(0.6) ? r.Normal(0, 8) : (90 * (int)(r.Uniform() * 4)) + r.Normal(0, 8);

    private static string Clock(CounterRandom r) =>
        string.Create(CultureInfo.InvariantCulture, $"{(int)(r.Uniform() * 24):D2}:{(int)(r.Uniform() * 60):D2}");

    private static string Number(CounterRandom r) => ((int)(r.Uniform() * 100000)).ToString("D5", CultureInfo.InvariantCulture);
}
