using System.Buffers.Binary;
using System.IO.Compression;
using System.IO.Hashing;

namespace ElbowAssist.Phantom.Output;

/// <summary>
/// Writes 16-bit grey PNG files (PNG specification, third edition: big-endian samples, colour type 0, one IDAT stream,
/// every row with the "Up" filter). The same pixels give the same bytes on one runtime.
/// </summary>
public static class GreyPng
{
    private const byte UpFilter = 2;
    private static readonly byte[] Signature = [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A];

    /// <summary>Writes an image.</summary>
    /// <param name="stream">Stream to write to; stays open.</param>
    /// <param name="pixels">Grey values row by row.</param>
    /// <param name="width">Columns.</param>
    /// <param name="height">Rows.</param>
    /// <exception cref="ArgumentException">The number of pixels is not width times height.</exception>
    public static void Write(Stream stream, ReadOnlySpan<ushort> pixels, int width, int height)
    {
        ArgumentNullException.ThrowIfNull(stream);
        if (width < 1 || height < 1 || pixels.Length != width * height)
        {
            throw new ArgumentException("The number of pixels must be width times height.", nameof(pixels));
        }

        stream.Write(Signature);
        Span<byte> header = stackalloc byte[13];
        BinaryPrimitives.WriteInt32BigEndian(header, width);
        BinaryPrimitives.WriteInt32BigEndian(header[4..], height);
        header[8] = 16;
        WriteChunk(stream, "IHDR"u8, header);
        using var data = new MemoryStream(pixels.Length);
        using (var zlib = new ZLibStream(data, CompressionLevel.Fastest, leaveOpen: true))
        {
            WriteRows(zlib, pixels, width, height);
        }

        WriteChunk(stream, "IDAT"u8, data.GetBuffer().AsSpan(0, (int)data.Length));
        WriteChunk(stream, "IEND"u8, []);
    }

    private static void WriteRows(Stream target, ReadOnlySpan<ushort> pixels, int width, int height)
    {
        var row = new byte[2 * width];
        var above = new byte[2 * width];
        var filtered = new byte[1 + (2 * width)];
        filtered[0] = UpFilter;
        for (var y = 0; y < height; y++)
        {
            for (var x = 0; x < width; x++)
            {
                BinaryPrimitives.WriteUInt16BigEndian(row.AsSpan(2 * x), pixels[(y * width) + x]);
            }

            for (var i = 0; i < row.Length; i++)
            {
                filtered[i + 1] = (byte)(row[i] - above[i]);
            }

            target.Write(filtered);
            (row, above) = (above, row);
        }
    }

    private static void WriteChunk(Stream stream, ReadOnlySpan<byte> type, ReadOnlySpan<byte> data)
    {
        Span<byte> number = stackalloc byte[4];
        BinaryPrimitives.WriteInt32BigEndian(number, data.Length);
        stream.Write(number);
        stream.Write(type);
        stream.Write(data);
        var crc = new Crc32();
        crc.Append(type);
        crc.Append(data);
        BinaryPrimitives.WriteUInt32BigEndian(number, crc.GetCurrentHashAsUInt32());
        stream.Write(number);
    }
}
