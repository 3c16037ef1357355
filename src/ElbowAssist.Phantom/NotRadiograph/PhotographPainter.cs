using ElbowAssist.Phantom.Exposure.Chain;
using ElbowAssist.Phantom.Sampling;

namespace ElbowAssist.Phantom.NotRadiograph;

/// <summary>Paints balls lit from one side, with cast shadows, before a background of uneven grain and a horizon.</summary>
internal static class PhotographPainter
{
    public static void Paint(ImagePlane plane, CounterRandom r)
    {
        Background(plane, r);
        var light = r.Uniform(0, 2 * Math.PI);
        var things = 1 + (int)(r.Uniform() * 9);
        for (var i = 0; i < things; i++)
        {
            Thing(plane, r, light);
        }

        new GaussianBlur().Apply(plane, plane, r.Uniform(0.3, 1.5));
        PlainImages.AddNoise(plane, r, r.Uniform(0, 0.04));
    }

    private static void Background(ImagePlane plane, CounterRandom r)
    {
        var layer = new ImagePlane().Resize(plane.Width, plane.Height);
        var blur = new GaussianBlur();
        Array.Fill(plane.Pixels, (float)r.Uniform(0.2, 0.8));
        foreach (var share in new[] { 0.2, 0.06, 0.02, 0.006 })
        {
            Array.Clear(layer.Pixels);
            PlainImages.AddNoise(layer, r, 1);
            var sigma = Math.Max(0.5, share * plane.Width);
            blur.Apply(layer, layer, sigma);
            var gain = (float)(r.Uniform(0.1, 0.5) * Math.Sqrt(share * 5) * sigma * 1.7);
            for (var i = 0; i < plane.Count; i++)
            {
                plane.Pixels[i] += gain * layer.Pixels[i];
            }
        }

        var horizon = (int)(r.Uniform(0.2, 0.9) * plane.Height);
        var step = (float)r.Uniform(-0.3, 0.3);
        for (var y = horizon; y < plane.Height; y++)
        {
            foreach (ref var pixel in plane.Row(y))
            {
                pixel += step;
            }
        }
    }

    private static void Thing(ImagePlane plane, CounterRandom r, double light)
    {
        var (lightY, lightX) = Math.SinCos(light);
        double cx = r.Uniform(0, plane.Width), cy = r.Uniform(0, plane.Height);
        double a = r.Uniform(0.04, 0.3) * plane.Width, b = a * r.Uniform(0.4, 1);
        var (sine, cosine) = Math.SinCos(r.Uniform(0, Math.PI));
        double albedo = r.Uniform(0.15, 1), stripes = r.Chance(0.4) ? r.Uniform(5, 30) : 0;
        for (var y = 0; y < plane.Height; y++)
        {
            var line = plane.Row(y);
            for (var x = 0; x < line.Length; x++)
            {
                double dx = x - cx, dy = y - cy;
                double u = ((dx * cosine) + (dy * sine)) / a, v = ((dy * cosine) - (dx * sine)) / b;
                var square = (u * u) + (v * v);
                if (square < 1)
                {
                    var lit = Math.Max(0.08, (0.6 * Math.Sqrt(1 - square)) + (0.5 * ((u * lightX) + (v * lightY))));
                    var paint = stripes > 0 ? 0.75 + (0.25 * Math.Sin(stripes * u)) : 1;
                    line[x] = (float)(albedo * lit * paint);
                }
                else if (square < 1.6 && (u * lightX) + (v * lightY) < 0)
                {
                    line[x] *= (float)(0.6 + (0.4 * (square - 1) / 0.6));
                }
            }
        }
    }
}
