using System.Buffers.Binary;
using ElbowAssist.Exchange.Dicom.Format;

namespace ElbowAssist.Exchange.Dicom.Pixels;

/// <summary>Walks the marker segments of a JPEG or JPEG-LS codestream up to its scan (T.81 annex B).</summary>
internal ref struct JpegSegments(ReadOnlySpan<byte> codestream)
{
    public const byte StartOfScan = 0xDA;

    private readonly ReadOnlySpan<byte> codestream = codestream;
    private int position = 2;

    /// <summary>Marker of the current segment, without its 0xFF.</summary>
    public byte Marker { get; private set; }

    /// <summary>Content of the current segment, without its length.</summary>
    public ReadOnlySpan<byte> Content { get; private set; }

    /// <summary>What follows the current segment: the coded data after a start of scan.</summary>
    public readonly ReadOnlySpan<byte> Rest => codestream[position..];

    /// <summary>Steps to the next segment; the walk ends with the start of scan.</summary>
    /// <exception cref="DicomFormatException">No start of image, or a segment that does not fit.</exception>
    public bool Next()
    {
        if (codestream.Length < 4 || codestream[0] != 0xFF || codestream[1] != 0xD8)
        {
            throw Damaged();
        }

        if (Marker == StartOfScan)
        {
            return false;
        }

        while (position < codestream.Length && codestream[position] == 0xFF)
        {
            position++;
        }

        if (position + 3 > codestream.Length)
        {
            throw Damaged();
        }

        Marker = codestream[position];
        var length = BinaryPrimitives.ReadUInt16BigEndian(codestream[(position + 1)..]);
        if (length < 2 || position + 1 + length > codestream.Length)
        {
            throw Damaged();
        }

        Content = codestream.Slice(position + 3, length - 2);
        position += 1 + length;
        return true;
    }

    public static DicomFormatException Damaged() =>
        DicomFormatException.Damaged($"its JPEG coded pixels cannot be followed to the end");
}
