using System.Buffers.Binary;
using ElbowAssist.Exchange.Dicom.Format;

namespace ElbowAssist.Exchange.Dicom.Pixels;

/// <summary>RLE Lossless, PS3.5 annex G: byte planes, most significant first, each packed by runs.</summary>
internal static class RleDecoder
{
    private const int HeaderLength = 64;

    /// <summary>One native little-endian frame, colour interleaved by plane as the layout's planar configuration says.</summary>
    public static byte[] Decode(ReadOnlySpan<byte> coded, PixelLayout layout)
    {
        var bytesPerSample = layout.BitsAllocated / 8;
        var planes = bytesPerSample * layout.Samples;
        if (coded.Length < HeaderLength || BinaryPrimitives.ReadUInt32LittleEndian(coded) != planes)
        {
            throw Damaged();
        }

        var frame = new byte[layout.FrameBytes];
        for (var plane = 0; plane < planes; plane++)
        {
            var start = Offset(coded, plane);
            var end = plane + 1 < planes ? Offset(coded, plane + 1) : coded.Length;
            if (start < HeaderLength || end < start || end > coded.Length)
            {
                throw Damaged();
            }

            var sample = plane / bytesPerSample;
            var significance = bytesPerSample - 1 - (plane % bytesPerSample);
            var (first, step) = layout.Planar
                ? ((sample * layout.PixelCount * bytesPerSample) + significance, bytesPerSample)
                : ((sample * bytesPerSample) + significance, layout.Samples * bytesPerSample);
            Unpack(coded[start..end], frame.AsSpan(first), step, layout.PixelCount);
        }

        return frame;
    }

    private static void Unpack(ReadOnlySpan<byte> packed, Span<byte> target, int step, int count)
    {
        var done = 0;
        for (var at = 0; done < count;)
        {
            if (at >= packed.Length)
            {
                throw Damaged();
            }

            var control = (sbyte)packed[at++];
            if (control == -128)
            {
                continue;
            }

            var literal = control >= 0;
            var length = literal ? control + 1 : 1 - control;
            if (at + (literal ? length : 1) > packed.Length)
            {
                throw Damaged();
            }

            for (var i = 0; i < length && done < count; i++, done++)
            {
                target[done * step] = packed[literal ? at + i : at];
            }

            at += literal ? length : 1;
        }
    }

    private static int Offset(ReadOnlySpan<byte> coded, int plane)
    {
        var offset = BinaryPrimitives.ReadUInt32LittleEndian(coded[(4 + (4 * plane))..]);
        return offset <= coded.Length ? (int)offset : throw Damaged();
    }

    private static DicomFormatException Damaged() =>
        DicomFormatException.Damaged($"its run-length coded pixels do not fill the film");
}
