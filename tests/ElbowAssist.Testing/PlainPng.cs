using System.Buffers.Binary;
using System.IO.Compression;
using System.IO.Hashing;

namespace ElbowAssist.Testing;

/// <summary>Grey PNG files for tests, written by the letter of the format (W3C PNG, third edition, sections 5 and 11).</summary>
public static class PlainPng
{
    private static ReadOnlySpan<byte> Signature => [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A];

    /// <summary>A 16-bit grey image; <paramref name="grey"/> gives the value at column x and row y.</summary>
    public static byte[] Grey16(int width, int height, Func<int, int, ushort> grey)
    {
        var rows = new byte[height * ((2 * width) + 1)];
        for (var y = 0; y < height; y++)
        {
            var row = rows.AsSpan(y * ((2 * width) + 1) + 1);
            for (var x = 0; x < width; x++)
            {
                BinaryPrimitives.WriteUInt16BigEndian(row[(2 * x)..], grey(x, y));
            }
        }

        using var file = new MemoryStream();
        file.Write(Signature);
        WriteChunk(file, "IHDR"u8, Header(width, height));
        WriteChunk(file, "IDAT"u8, Compress(rows));
        WriteChunk(file, "IEND"u8, []);
        return file.ToArray();
    }

    /// <summary>A file that announces a size and holds next to nothing.</summary>
    public static byte[] Announcing(int width, int height)
    {
        using var file = new MemoryStream();
        file.Write(Signature);
        WriteChunk(file, "IHDR"u8, Header(width, height));
        WriteChunk(file, "IDAT"u8, Compress(new byte[1024]));
        WriteChunk(file, "IEND"u8, []);
        return file.ToArray();
    }

    /// <summary>A whole image of one grey value, of any size, at the price of its compressed rows.</summary>
    public static byte[] Blank(int width, int height)
    {
        using var packed = new MemoryStream();
        using (var zlib = new ZLibStream(packed, CompressionLevel.Fastest, leaveOpen: true))
        {
            var row = new byte[(2 * width) + 1];
            for (var y = 0; y < height; y++)
            {
                zlib.Write(row);
            }
        }

        using var file = new MemoryStream();
        file.Write(Signature);
        WriteChunk(file, "IHDR"u8, Header(width, height));
        WriteChunk(file, "IDAT"u8, packed.ToArray());
        WriteChunk(file, "IEND"u8, []);
        return file.ToArray();
    }

    private static byte[] Header(int width, int height)
    {
        var header = new byte[13];
        BinaryPrimitives.WriteInt32BigEndian(header, width);
        BinaryPrimitives.WriteInt32BigEndian(header.AsSpan(4), height);
        header[8] = 16; // bits; colour type 0 (grey), compression, filter and interlace methods 0
        return header;
    }

    private static byte[] Compress(byte[] rows)
    {
        using var packed = new MemoryStream();
        using (var zlib = new ZLibStream(packed, CompressionLevel.Fastest, leaveOpen: true))
        {
            zlib.Write(rows);
        }

        return packed.ToArray();
    }

    private static void WriteChunk(Stream file, ReadOnlySpan<byte> type, ReadOnlySpan<byte> data)
    {
        Span<byte> word = stackalloc byte[4];
        BinaryPrimitives.WriteInt32BigEndian(word, data.Length);
        file.Write(word);
        file.Write(type);
        file.Write(data);
        var crc = new Crc32();
        crc.Append(type);
        crc.Append(data);
        BinaryPrimitives.WriteUInt32BigEndian(word, crc.GetCurrentHashAsUInt32());
        file.Write(word);
    }
}
