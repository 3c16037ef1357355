using System.Buffers;
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
        using IMemoryOwner<int> rented = MemoryPool<int>.Shared.Rent(field.Width);
        var bends = rented.Memory.Span[..field.Width];
        long sum = 0, count = 0;
        for (var y = field.Top + 1; y < field.Bottom - 1; y += step)
        {
            ReadOnlySpan<ushort> Row(int row) => film.Pixels.Slice((row * film.Width) + field.Left, field.Width);
            Bend(Row(y - 1), Row(y), Row(y + 1), bends);
            for (var x = 1; x < bends.Length - 1; x += step)
            {
                sum += Math.Abs(bends[x - 1] - (2 * bends[x]) + bends[x + 1]);
                count++;
            }
        }

        return Math.Sqrt(Math.PI / 2) / 6 * sum / count;
    }

    /// <summary>The mask is the product of (1, −2, 1) down, which is taken here, and (1, −2, 1) across.</summary>
    private static void Bend(ReadOnlySpan<ushort> above, ReadOnlySpan<ushort> here, ReadOnlySpan<ushort> below, Span<int> bends)
    {
        var x = 0;
        for (; x + Vector<ushort>.Count <= bends.Length; x += Vector<ushort>.Count)
        {
            Vector.Widen(new Vector<ushort>(above[x..]), out var a, out var aMore);
            Vector.Widen(new Vector<ushort>(here[x..]), out var h, out var hMore);
            Vector.Widen(new Vector<ushort>(below[x..]), out var b, out var bMore);
            Vector.AsVectorInt32(a + b - (2 * h)).CopyTo(bends[x..]);
            Vector.AsVectorInt32(aMore + bMore - (2 * hMore)).CopyTo(bends[(x + Vector<int>.Count)..]);
        }

        for (; x < bends.Length; x++)
        {
            bends[x] = above[x] + below[x] - (2 * here[x]);
        }
    }
}
