using System.Numerics;
using ElbowAssist.Imaging.Normalisation;

namespace ElbowAssist.Imaging.Quality;

/// <summary>
/// Noise after J. Immerkær, Fast noise variance estimation, Computer Vision and Image Understanding 64 (1996) 300–302:
/// the mean absolute response of a mask that ignores planes and edges (reference from memory).
/// </summary>
internal static class NoiseFigure
{
    private const int EnoughSamples = 1 << 17;

    /// <summary>Standard deviation in grey values; exact in the mean for Gaussian noise on a plane. 0 if the field is under 3 pixels.</summary>
    public static double StandardDeviation(Radiograph film, ExposedField field)
    {
        if (field.Width < 3 || field.Height < 3)
        {
            return 0;
        }

        var step = Math.Max(1, (int)Math.Sqrt((double)field.Width * field.Height / EnoughSamples));
        long sum = 0, count = 0;
        for (var y = field.Top + 1; y < field.Bottom - 1; y += step)
        {
            ReadOnlySpan<ushort> Row(int row) => film.Pixels.Slice((row * film.Width) + field.Left, field.Width);
            ReadOnlySpan<ushort> above = Row(y - 1), here = Row(y), below = Row(y + 1);
            var x = 1;
            for (; step == 1 && x + Vector<ushort>.Count < field.Width; x += Vector<ushort>.Count)
            {
                sum += Responses(above[(x - 1)..], here[(x - 1)..], below[(x - 1)..]);
                count += Vector<ushort>.Count;
            }

            for (; x < field.Width - 1; x += step)
            {
                sum += Math.Abs((4 * here[x]) - (2 * (here[x - 1] + here[x + 1] + above[x] + below[x])) + above[x - 1] + above[x + 1] + below[x - 1] + below[x + 1]);
                count++;
            }
        }

        return Math.Sqrt(Math.PI / 2) / 6 * sum / count;
    }

    /// <summary>Sum of the absolute responses at the second and the following pixels of three rows, as many as a vector holds.</summary>
    private static long Responses(ReadOnlySpan<ushort> above, ReadOnlySpan<ushort> here, ReadOnlySpan<ushort> below)
    {
        // The mask is the product of (1, −2, 1) down and (1, −2, 1) across.
        var (first, firstMore) = Down(above, here, below);
        var (middle, middleMore) = Down(above[1..], here[1..], below[1..]);
        var (last, lastMore) = Down(above[2..], here[2..], below[2..]);
        return Vector.Sum(Vector.Abs(first - (2 * middle) + last)) + (long)Vector.Sum(Vector.Abs(firstMore - (2 * middleMore) + lastMore));
    }

    private static (Vector<int> Low, Vector<int> High) Down(ReadOnlySpan<ushort> above, ReadOnlySpan<ushort> here, ReadOnlySpan<ushort> below)
    {
        Vector.Widen(new Vector<ushort>(above), out var a, out var aMore);
        Vector.Widen(new Vector<ushort>(here), out var h, out var hMore);
        Vector.Widen(new Vector<ushort>(below), out var b, out var bMore);
        return (Vector.AsVectorInt32(a + b) - (2 * Vector.AsVectorInt32(h)), Vector.AsVectorInt32(aMore + bMore) - (2 * Vector.AsVectorInt32(hMore)));
    }
}
