using System.Numerics;

namespace ElbowAssist.Phantom.Exposure.Chain;

/// <summary>
/// Separable Gaussian blur with edge pixels repeated. Wide blurs run on a shrunken copy and are stretched back
/// bilinearly, which is exact enough for what is smooth by then.
/// </summary>
internal sealed class GaussianBlur
{
    private const double SmallestSigma = 0.15;
    private const double LargestDirectSigma = 3;
    private readonly ImagePlane rows = new();
    private readonly ImagePlane small = new();
    private float[] padded = [];

    /// <summary>Blurs a plane into another, which may be the same.</summary>
    /// <param name="source">Plane to blur.</param>
    /// <param name="target">Receives the result.</param>
    /// <param name="sigma">Standard deviation in pixels.</param>
    public void Apply(ImagePlane source, ImagePlane target, double sigma)
    {
        var factor = 1;
        while (sigma / (2 * factor) > LargestDirectSigma / 2 && Math.Min(source.Width, source.Height) / (2 * factor) >= 8)
        {
            factor *= 2;
        }

        if (sigma < SmallestSigma)
        {
            if (!ReferenceEquals(source, target))
            {
                target.CopyFrom(source);
            }
        }
        else if (factor == 1)
        {
            Direct(source, target, sigma);
        }
        else
        {
            Shrink(source, small, factor);
            Direct(small, small, sigma / factor);
            Stretch(small, target.Resize(source.Width, source.Height), factor);
        }
    }

    private void Direct(ImagePlane source, ImagePlane target, double sigma)
    {
        var kernel = Kernel(sigma);
        var radius = kernel.Length - 1;
        var width = source.Width;
        var height = source.Height;
        rows.Resize(width, height);
        if (padded.Length < width + (2 * radius) + Vector<float>.Count)
        {
            padded = new float[width + (2 * radius) + Vector<float>.Count];
        }

        for (var y = 0; y < height; y++)
        {
            var line = source.Row(y);
            line.CopyTo(padded.AsSpan(radius));
            padded.AsSpan(0, radius).Fill(line[0]);
            padded.AsSpan(radius + width, radius).Fill(line[^1]);
            BlurLine(kernel, radius, rows.Row(y));
        }

        target.Resize(width, height);
        for (var y = 0; y < height; y++)
        {
            var sum = target.Row(y);
            Scale(rows.Row(y), kernel[0], sum);
            for (var k = 1; k <= radius; k++)
            {
                AddPair(rows.Row(Math.Max(0, y - k)), rows.Row(Math.Min(height - 1, y + k)), kernel[k], sum);
            }
        }
    }

    private void BlurLine(float[] kernel, int radius, Span<float> target)
    {
        Scale(padded.AsSpan(radius, target.Length), kernel[0], target);
        for (var k = 1; k <= radius; k++)
        {
            AddPair(padded.AsSpan(radius - k, target.Length), padded.AsSpan(radius + k, target.Length), kernel[k], target);
        }
    }

    private static void Scale(ReadOnlySpan<float> source, float factor, Span<float> target)
    {
        var lanes = Vector<float>.Count;
        var i = 0;
        for (; i <= target.Length - lanes; i += lanes)
        {
            (new Vector<float>(source[i..]) * factor).CopyTo(target[i..]);
        }

        for (; i < target.Length; i++)
        {
            target[i] = source[i] * factor;
        }
    }

    private static void AddPair(ReadOnlySpan<float> a, ReadOnlySpan<float> b, float factor, Span<float> sum)
    {
        var lanes = Vector<float>.Count;
        var i = 0;
        for (; i <= sum.Length - lanes; i += lanes)
        {
            (new Vector<float>(sum[i..]) + ((new Vector<float>(a[i..]) + new Vector<float>(b[i..])) * factor)).CopyTo(sum[i..]);
        }

        for (; i < sum.Length; i++)
        {
            sum[i] += (a[i] + b[i]) * factor;
        }
    }

    /// <summary>Half of the symmetric kernel, from its centre outwards; the whole adds up to 1.</summary>
    private static float[] Kernel(double sigma)
    {
        var radius = Math.Max(1, (int)Math.Ceiling(3 * sigma));
        var half = Enumerable.Range(0, radius + 1).Select(k => Math.Exp(-k * k / (2 * sigma * sigma))).ToArray();
        var total = (2 * half.Sum()) - half[0];
        return [.. half.Select(value => (float)(value / total))];
    }

    private static void Shrink(ImagePlane source, ImagePlane target, int factor)
    {
        var width = (source.Width + factor - 1) / factor;
        var height = (source.Height + factor - 1) / factor;
        target.Resize(width, height);
        for (var y = 0; y < height; y++)
        {
            var line = target.Row(y);
            line.Clear();
            var bottom = Math.Min(source.Height, (y + 1) * factor);
            for (var sy = y * factor; sy < bottom; sy++)
            {
                var from = source.Row(sy);
                for (var sx = 0; sx < from.Length; sx++)
                {
                    line[sx / factor] += from[sx];
                }
            }

            var rowsSummed = bottom - (y * factor);
            for (var x = 0; x < width; x++)
            {
                line[x] /= rowsSummed * (Math.Min(source.Width, (x + 1) * factor) - (x * factor));
            }
        }
    }

    private static void Stretch(ImagePlane source, ImagePlane target, int factor)
    {
        var scale = 1f / factor;
        for (var y = 0; y < target.Height; y++)
        {
            var fy = Math.Clamp(((y + 0.5f) * scale) - 0.5f, 0, source.Height - 1);
            var y0 = (int)fy;
            var upper = source.Row(y0);
            var lower = source.Row(Math.Min(source.Height - 1, y0 + 1));
            var ty = fy - y0;
            var line = target.Row(y);
            for (var x = 0; x < line.Length; x++)
            {
                var fx = Math.Clamp(((x + 0.5f) * scale) - 0.5f, 0, source.Width - 1);
                var x0 = (int)fx;
                var x1 = Math.Min(source.Width - 1, x0 + 1);
                var tx = fx - x0;
                var top = upper[x0] + ((upper[x1] - upper[x0]) * tx);
                var bottom = lower[x0] + ((lower[x1] - lower[x0]) * tx);
                line[x] = top + ((bottom - top) * ty);
            }
        }
    }
}
