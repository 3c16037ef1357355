using System.Numerics;
using System.Runtime.InteropServices;

namespace ElbowAssist.Imaging.Normalisation;

/// <summary>Grey values of a crop as networks take them. Whatever the width of the processor's vectors, the bits are the same.</summary>
internal static class GreyStandard
{
    /// <summary>Added to the standard deviation so that an empty crop stays finite.</summary>
    private const double Softening = 0.03;

    /// <summary>A window of grey values to 0…1, bone bright.</summary>
    public static void ToUnit(ReadOnlySpan<ushort> values, GreyWindow window, bool dark, Span<float> target)
    {
        var scale = 1f / window.Range;
        var i = 0;
        for (; i + Vector<ushort>.Count <= values.Length; i += Vector<ushort>.Count)
        {
            Vector.Widen(new Vector<ushort>(values[i..]), out var first, out var second);
            Unit(first).CopyTo(target[i..]);
            Unit(second).CopyTo(target[(i + Vector<float>.Count)..]);
        }

        for (; i < values.Length; i++)
        {
            var unit = Math.Clamp((values[i] - window.Low) * scale, 0f, 1f);
            target[i] = dark ? 1 - unit : unit;
        }

        Vector<float> Unit(Vector<uint> some)
        {
            var unit = Vector.Clamp(
                Vector.ConvertToSingle(Vector.AsVectorInt32(some) - new Vector<int>(window.Low)) * scale, Vector<float>.Zero, Vector<float>.One);
            return dark ? Vector<float>.One - unit : unit;
        }
    }

    /// <summary>(x − mean) / (standard deviation + 0.03) in place.</summary>
    public static void Standardise(Span<float> crop)
    {
        double sum = 0, squares = 0;
        foreach (var value in crop)
        {
            sum += value;
            squares += (double)value * value;
        }

        var mean = sum / crop.Length;
        var deviation = Math.Sqrt(Math.Max(0, (squares / crop.Length) - (mean * mean)));
        var (centre, factor) = ((float)mean, (float)(1 / (deviation + Softening)));
        foreach (ref var some in MemoryMarshal.Cast<float, Vector<float>>(crop))
        {
            some = (some - new Vector<float>(centre)) * factor;
        }

        foreach (ref var value in crop[(crop.Length - (crop.Length % Vector<float>.Count))..])
        {
            value = (value - centre) * factor;
        }
    }
}
