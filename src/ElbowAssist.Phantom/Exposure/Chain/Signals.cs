using System.Numerics;

namespace ElbowAssist.Phantom.Exposure.Chain;

/// <summary>Pointwise steps on whole planes.</summary>
internal static class Signals
{
    /// <summary>Negative natural logarithm, of at least a millionth.</summary>
    public static void ToLog(ImagePlane plane)
    {
        var pixels = plane.Pixels.AsSpan(0, plane.Count);
        var lanes = Vector<float>.Count;
        var i = 0;
        for (; i <= pixels.Length - lanes; i += lanes)
        {
            (-Vector.Log(Vector.Max(new Vector<float>(pixels[i..]), new Vector<float>(1e-6f)))).CopyTo(pixels[i..]);
        }

        for (; i < pixels.Length; i++)
        {
            pixels[i] = -MathF.Log(MathF.Max(pixels[i], 1e-6f));
        }
    }

    /// <summary>Sum of two planes into the first, scaled, and held below a limit.</summary>
    public static void Add(ImagePlane sum, ImagePlane other)
    {
        for (var i = 0; i < sum.Count; i++)
        {
            sum.Pixels[i] += other.Pixels[i];
        }
    }

    /// <summary>Cuts a plane at a limit.</summary>
    public static void CutAbove(ImagePlane plane, float limit)
    {
        for (var i = 0; i < plane.Count; i++)
        {
            plane.Pixels[i] = MathF.Min(limit, plane.Pixels[i]);
        }
    }

    /// <summary>Moves a share of a plane into its own wide blur.</summary>
    public static void Spread(ImagePlane plane, ImagePlane scratch, GaussianBlur blur, double sigma, float share)
    {
        if (share <= 0)
        {
            return;
        }

        blur.Apply(plane, scratch, sigma);
        for (var i = 0; i < plane.Count; i++)
        {
            plane.Pixels[i] += share * (scratch.Pixels[i] - plane.Pixels[i]);
        }
    }
}
