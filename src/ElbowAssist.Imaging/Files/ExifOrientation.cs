using System.Buffers.Binary;

namespace ElbowAssist.Imaging.Files;

/// <summary>
/// Reads the orientation tag (0x0112) of an EXIF block. Orientation is applied on decoding, because browsers and
/// viewers show the turned picture and overlays must lie on what the reader sees. EXIF 2.32, 4.6.4.
/// </summary>
internal static class ExifOrientation
{
    /// <summary>Orientation 1 to 8 of an EXIF block that begins with its TIFF header; 1 if there is none.</summary>
    public static int Read(ReadOnlySpan<byte> block)
    {
        if (block.Length < 8)
        {
            return 1;
        }

        var little = block[0] == 'I';
        var at = U32(block, 4, little);
        if (at > block.Length - 2)
        {
            return 1;
        }

        var entries = U16(block, (int)at, little);
        for (var i = 0; i < entries; i++)
        {
            var entry = (int)at + 2 + (i * 12);
            if (entry > block.Length - 12)
            {
                return 1;
            }

            if (U16(block, entry, little) == 0x0112)
            {
                var value = U16(block, entry + 8, little);
                return value is >= 1 and <= 8 ? value : 1;
            }
        }

        return 1;
    }

    private static ushort U16(ReadOnlySpan<byte> block, int at, bool little) => little
        ? BinaryPrimitives.ReadUInt16LittleEndian(block[at..])
        : BinaryPrimitives.ReadUInt16BigEndian(block[at..]);

    private static uint U32(ReadOnlySpan<byte> block, int at, bool little) => little
        ? BinaryPrimitives.ReadUInt32LittleEndian(block[at..])
        : BinaryPrimitives.ReadUInt32BigEndian(block[at..]);
}
