using System.Buffers.Binary;
using System.IO.Hashing;

namespace ElbowAssist.Imaging.Files;

/// <summary>
/// Walks the chunks of a PNG file to IEND and checks every CRC. Layout: W3C Portable Network Graphics Specification,
/// third edition, clauses 5 and 11.
/// </summary>
internal static class PngContainer
{
    private const string Name = "PNG";

    /// <summary>Most bytes one byte of deflate data can become (RFC 1951: 258 bytes from a little over 2 bits).</summary>
    private const long HighestExpansion = 1032;

    private static ReadOnlySpan<byte> Signature => [0x89, (byte)'P', (byte)'N', (byte)'G', 13, 10, 26, 10];

    public static bool Is(ReadOnlySpan<byte> file) => file.StartsWith(Signature);

    public static ContainerFacts Inspect(ReadOnlySpan<byte> file)
    {
        var at = Signature.Length;
        ContainerFacts? header = null;
        var orientation = 1;
        long dataBytes = 0;
        while (true)
        {
            if (file.Length - at < 12)
            {
                throw DamagedContainerException.CutOff(Name);
            }

            var length = BinaryPrimitives.ReadUInt32BigEndian(file[at..]);
            if (length > file.Length - at - 12)
            {
                throw DamagedContainerException.CutOff(Name);
            }

            var type = file.Slice(at + 4, 4);
            var body = file.Slice(at + 8, (int)length);
            var crc = BinaryPrimitives.ReadUInt32BigEndian(file[(at + 8 + (int)length)..]);
            if (Crc32.HashToUInt32(file.Slice(at + 4, 4 + (int)length)) != crc)
            {
                throw DamagedContainerException.Damaged(Name, "a checksum does not match");
            }

            at += 12 + (int)length;
            if (header is null)
            {
                header = type.SequenceEqual("IHDR"u8) ? ReadHeader(body) : throw Damage("the header is missing");
            }
            else if (type.SequenceEqual("IDAT"u8))
            {
                dataBytes += length;
            }
            else if (type.SequenceEqual("eXIf"u8))
            {
                orientation = ExifOrientation.Read(body);
            }
            else if (type.SequenceEqual("IEND"u8))
            {
                return Complete(header.Value, dataBytes) with { Orientation = orientation };
            }
        }
    }

    private static ContainerFacts ReadHeader(ReadOnlySpan<byte> body)
    {
        if (body.Length != 13)
        {
            throw Damage("the header has a wrong length");
        }

        var width = BinaryPrimitives.ReadUInt32BigEndian(body);
        var height = BinaryPrimitives.ReadUInt32BigEndian(body[4..]);
        int depth = body[8], colour = body[9];
        var valid = colour switch
        {
            0 => depth is 1 or 2 or 4 or 8 or 16,
            3 => depth is 1 or 2 or 4 or 8,
            2 or 4 or 6 => depth is 8 or 16,
            _ => false,
        };
        if (width == 0 || height == 0 || !valid || body[10] != 0 || body[11] != 0 || body[12] > 1)
        {
            throw Damage("the header holds impossible values");
        }

        return new ContainerFacts(FilmFormat.Png, width, height, depth, colour == 0 ? 1 : colour == 2 ? 3 : 4, 1);
    }

    private static ContainerFacts Complete(ContainerFacts header, long dataBytes)
    {
        var rowBits = header.Width * header.BitDepth;
        if (dataBytes == 0 || (((rowBits / 8) + 1) * header.Height) / HighestExpansion > dataBytes)
        {
            throw Damage("it holds too little image data for its size");
        }

        return header;
    }

    private static DamagedContainerException Damage(string where) => DamagedContainerException.Damaged(Name, where);
}
