using System.Buffers.Binary;
using ElbowAssist.Exchange.Dicom.Format;

namespace ElbowAssist.Exchange.Dicom.Pixels;

/// <summary>
/// Looks up the size a codestream claims before a native library sees it, so that a small file cannot make it allocate
/// more than the header of the film allows.
/// </summary>
internal static class CodestreamSize
{
    /// <exception cref="DicomFormatException">No size found, or one that differs from the film's.</exception>
    public static void Check(ReadOnlySpan<byte> codestream, PixelLayout layout)
    {
        if (Of(codestream) is not { } size)
        {
            throw DicomFormatException.Damaged($"its coded pixels have no readable header");
        }

        if (size.Width != layout.Width || size.Height != layout.Height)
        {
            throw DicomFormatException.Damaged($"its coded pixels are {size.Width} x {size.Height}, its header says {layout.Width} x {layout.Height}");
        }
    }

    private static (long Width, long Height)? Of(ReadOnlySpan<byte> bytes)
    {
        // JPEG 2000: SOC, then SIZ (ISO/IEC 15444-1 A.5.1) with size and offset of the reference grid.
        if (bytes.Length > 24 && bytes.StartsWith((ReadOnlySpan<byte>)[0xFF, 0x4F, 0xFF, 0x51]))
        {
            long Field(ReadOnlySpan<byte> b, int at) => BinaryPrimitives.ReadUInt32BigEndian(b[at..]);
            return (Field(bytes, 8) - Field(bytes, 16), Field(bytes, 12) - Field(bytes, 20));
        }

        return bytes.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xD8]) ? OfJpeg(bytes) : null;
    }

    private static (long Width, long Height)? OfJpeg(ReadOnlySpan<byte> bytes)
    {
        for (var at = 2; at + 9 < bytes.Length;)
        {
            if (bytes[at] != 0xFF)
            {
                return null;
            }

            var marker = bytes[at + 1];
            if (marker is >= 0xC0 and <= 0xCF and not (0xC4 or 0xC8 or 0xCC))
            {
                return (BinaryPrimitives.ReadUInt16BigEndian(bytes[(at + 7)..]), BinaryPrimitives.ReadUInt16BigEndian(bytes[(at + 5)..]));
            }

            at += marker == 0xFF ? 1 : 2 + BinaryPrimitives.ReadUInt16BigEndian(bytes[(at + 2)..]);
        }

        return null;
    }
}
