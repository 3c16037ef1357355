using ElbowAssist.Phantom.Exposure.Chain;

namespace ElbowAssist.Phantom.Exposure.Annotations;

/// <summary>Draws signs into a plane by blending every pixel near a stroke towards a value.</summary>
internal static class AnnotationPainter
{
    /// <summary>Share of the beam that passes a lead letter.</summary>
    public const float LeadTransmission = 0.01f;

    /// <summary>Multiplies the signal by what lead lets through.</summary>
    public static void ExposeLead(ImagePlane signal, Annotation annotation) =>
        ForEachPixel(signal, annotation, 0, (plane, index, cover) =>
            plane.Pixels[index] *= 1 - (cover * (1 - LeadTransmission)));

    /// <summary>Paints a sign of one grey over a processed film.</summary>
    public static void BurnIn(ImagePlane film, Annotation annotation)
    {
        var grey = (float)annotation.Grey;
        if (annotation.Kind == AnnotationKind.Boxed)
        {
            ForEachPixel(film, annotation, 0.35, (plane, index, cover) => Blend(plane, index, grey > 0.5f ? 0.05f : 0.95f, cover));
        }

        ForEachPixel(film, annotation, 0, (plane, index, cover) => Blend(plane, index, grey, cover));
    }

    private static void Blend(ImagePlane plane, int index, float grey, float cover) =>
        plane.Pixels[index] += cover * (grey - plane.Pixels[index]);

    /// <summary>Visits the pixels under the strokes, or under the box around them if a margin is given.</summary>
    private static void ForEachPixel(ImagePlane plane, Annotation sign, double boxMargin, Action<ImagePlane, int, float> visit)
    {
        var strokes = StrokeFont.Lay(sign.Text);
        if (strokes.Count == 0)
        {
            return;
        }

        var longer = Math.Max(plane.Width, plane.Height);
        var cap = sign.Height * longer;
        var halfWidth = strokes.Max(s => Math.Max(Math.Abs(s.X1), Math.Abs(s.X2))) + boxMargin;
        var halfHeight = 0.5 + boxMargin;
        var halfStroke = sign.StrokeWidth / 2;
        var reach = (Math.Sqrt((halfWidth * halfWidth) + 0.25) + boxMargin + halfStroke) * cap;
        var centreX = (plane.Width / 2.0) + (sign.X * longer);
        var centreY = (plane.Height / 2.0) + (sign.Y * longer);
        var (sine, cosine) = Math.SinCos(sign.TurnDegrees * Math.PI / 180);
        for (var y = Math.Max(0, (int)(centreY - reach)); y < Math.Min(plane.Height, centreY + reach); y++)
        {
            for (var x = Math.Max(0, (int)(centreX - reach)); x < Math.Min(plane.Width, centreX + reach); x++)
            {
                var dx = (x + 0.5 - centreX) / cap;
                var dy = (y + 0.5 - centreY) / cap;
                var u = (dx * cosine) + (dy * sine);
                var v = (dy * cosine) - (dx * sine);
                u = sign.Mirrored ? -u : u;
                var outside = boxMargin > 0
                    ? Math.Max(Math.Abs(u) - halfWidth, Math.Abs(v) - halfHeight)
                    : Distance(strokes, u, v) - halfStroke;
                var cover = Math.Clamp(0.5 - (outside * cap), 0, 1);
                if (cover > 0)
                {
                    visit(plane, (y * plane.Width) + x, (float)cover);
                }
            }
        }
    }

    private static double Distance(IReadOnlyList<Stroke> strokes, double u, double v)
    {
        var least = double.MaxValue;
        for (var i = 0; i < strokes.Count; i++)
        {
            var s = strokes[i];
            var dx = s.X2 - s.X1;
            var dy = s.Y2 - s.Y1;
            var t = Math.Clamp((((u - s.X1) * dx) + ((v - s.Y1) * dy)) / ((dx * dx) + (dy * dy)), 0, 1);
            var ex = u - s.X1 - (t * dx);
            var ey = v - s.Y1 - (t * dy);
            least = Math.Min(least, (ex * ex) + (ey * ey));
        }

        return Math.Sqrt(least);
    }
}
