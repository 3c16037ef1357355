using System.Globalization;
using ElbowAssist.Phantom.Exposure.Annotations;
using ElbowAssist.Phantom.Exposure.Chain;
using ElbowAssist.Phantom.Sampling;

namespace ElbowAssist.Phantom.NotRadiograph;

/// <summary>Draws images that a reader may open by mistake: photographs, pages, drawings, noise. Nothing on them is real.</summary>
public static class PlainImages
{
    private const ulong Stream = 0x5049;

    /// <summary>The kind that a seed draws.</summary>
    /// <param name="seed">Seed.</param>
    public static PlainImageKind Kind(ulong seed) => Drawn(new CounterRandom(seed, Stream));

    /// <summary>An image of a seed.</summary>
    /// <param name="seed">Seed.</param>
    /// <param name="size">Pixels along each side, at least 16.</param>
    /// <param name="kind">Kind, or null to draw one.</param>
    /// <returns>Grey values row by row.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The size is below 16.</exception>
    public static ushort[] Make(ulong seed, int size, PlainImageKind? kind = null)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(size, 16);
        var r = new CounterRandom(seed, Stream);
        var drawn = Drawn(r);
        var plane = new ImagePlane().Resize(size, size);
        switch (kind ?? drawn)
        {
            case PlainImageKind.Blank:
                Array.Fill(plane.Pixels, (float)r.Uniform());
                AddNoise(plane, r, r.Chance(0.5) ? 0 : 0.01);
                break;
            case PlainImageKind.Noise:
                AddNoise(plane, r, 0.5);
                new GaussianBlur().Apply(plane, plane, r.Uniform(0, 6));
                Stretch(plane);
                break;
            case PlainImageKind.Gradient:
                Gradient(plane, r);
                break;
            case PlainImageKind.TextPage:
                TextPage(plane, r);
                break;
            case PlainImageKind.Drawing:
                Drawing(plane, r);
                break;
            case PlainImageKind.Photograph:
                PhotographPainter.Paint(plane, r);
                break;
            default:
                Screen(plane, r);
                break;
        }

        return [.. plane.Pixels.Take(size * size).Select(v => (ushort)((Math.Clamp(v, 0f, 1f) * 65535) + 0.5f))];
    }

    private static PlainImageKind Drawn(CounterRandom r) => (PlainImageKind)(int)(r.Uniform() * 7);

    internal static void AddNoise(ImagePlane plane, CounterRandom r, double amount)
    {
        for (var i = 0; i < plane.Count; i++)
        {
            plane.Pixels[i] += (float)(amount * ((2 * r.Uniform()) - 1));
        }
    }

    private static void Stretch(ImagePlane plane)
    {
        var low = plane.Pixels.Take(plane.Count).Min();
        var high = plane.Pixels.Take(plane.Count).Max();
        for (var i = 0; i < plane.Count; i++)
        {
            plane.Pixels[i] = (plane.Pixels[i] - low) / MathF.Max(high - low, 1e-6f);
        }
    }

    private static void Gradient(ImagePlane plane, CounterRandom r)
    {
        var (sine, cosine) = Math.SinCos(r.Uniform(0, 2 * Math.PI));
        var round = r.Chance(0.4);
        double from = r.Uniform(), to = r.Uniform();
        for (var y = 0; y < plane.Height; y++)
        {
            for (var x = 0; x < plane.Width; x++)
            {
                double u = (x / (double)plane.Width) - 0.5, v = (y / (double)plane.Height) - 0.5;
                var t = round ? 1.4 * Math.Sqrt((u * u) + (v * v)) : 0.5 + (u * cosine) + (v * sine);
                plane.Row(y)[x] = (float)(from + ((to - from) * t));
            }
        }
    }

    private static void TextPage(ImagePlane plane, CounterRandom r)
    {
        var isDark = r.Chance(0.2);
        Array.Fill(plane.Pixels, isDark ? 0.05f : (float)r.Uniform(0.85, 1));
        var height = r.Uniform(0.012, 0.03);
        var turn = r.Chance(0.7) ? 0 : r.Normal(0, 4);
        for (var y = -0.44; y < 0.44; y += height * 1.9)
        {
            var letters = (int)(r.Uniform(0.3, 0.85) / height / 0.95);
            var line = string.Concat(Enumerable.Range(0, letters).Select(_ => r.Chance(0.17) ? ' ' : (char)('A' + (int)(r.Uniform() * 26))));
            line = line.Replace('J', 'I').Replace('Q', 'O').Replace('Z', '2');
            var x = -0.45 + (letters * height * 0.93 / 2);
            AnnotationPainter.BurnIn(plane, new Annotation(line, AnnotationKind.BurnedIn, x, y, height, turn, false, 0.14, isDark ? 0.9 : 0.1));
        }
    }

    private static void Drawing(ImagePlane plane, CounterRandom r)
    {
        Array.Fill(plane.Pixels, (float)r.Uniform(0.9, 1));
        var strokes = 4 + (int)(r.Uniform() * 30);
        for (var i = 0; i < strokes; i++)
        {
            AnnotationPainter.BurnIn(plane, new Annotation(
                r.Chance(0.5) ? "/" : r.Chance(0.5) ? "°" : "-",
                AnnotationKind.BurnedIn,
                r.Uniform(-0.4, 0.4),
                r.Uniform(-0.4, 0.4),
                r.Uniform(0.1, 0.6),
                r.Uniform(0, 360),
                false,
                r.Uniform(0.01, 0.05),
                r.Uniform(0, 0.3)));
        }
    }

    private static void Screen(ImagePlane plane, CounterRandom r)
    {
        Array.Fill(plane.Pixels, (float)r.Uniform());
        var boxes = 3 + (int)(r.Uniform() * 9);
        for (var i = 0; i < boxes; i++)
        {
            var grey = (float)r.Uniform();
            int x0 = (int)(r.Uniform() * plane.Width), y0 = (int)(r.Uniform() * plane.Height);
            int x1 = Math.Min(plane.Width, x0 + (int)(r.Uniform(0.05, 0.7) * plane.Width));
            int y1 = Math.Min(plane.Height, y0 + (int)(r.Uniform(0.03, 0.5) * plane.Height));
            for (var y = y0; y < y1; y++)
            {
                plane.Row(y)[x0..x1].Fill(grey);
            }

            var label = ((int)(r.Uniform() * 10000)).ToString(CultureInfo.InvariantCulture);
            AnnotationPainter.BurnIn(plane, new Annotation(
                label, AnnotationKind.BurnedIn, r.Uniform(-0.4, 0.4), r.Uniform(-0.4, 0.4), r.Uniform(0.02, 0.06), 0, false, 0.14, r.Uniform()));
        }
    }
}
