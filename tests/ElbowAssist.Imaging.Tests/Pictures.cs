using System.Buffers.Binary;
using System.IO.Compression;
using System.IO.Hashing;
using ElbowAssist.Imaging.Native;
using OpenCvSharp;

namespace ElbowAssist.Imaging.Tests;

/// <summary>Small pictures and the files made from them.</summary>
internal static class Pictures
{
    /// <summary>A smooth pattern with seeded noise, using the whole range of the bit depth.</summary>
    public static ushort[] Pattern(int width, int height, int bits = 16, int seed = 1)
    {
        var random = new Random(seed);
        var top = (1 << bits) - 1;
        var pixels = new ushort[width * height];
        for (var y = 0; y < height; y++)
        {
            for (var x = 0; x < width; x++)
            {
                var wave = 0.5 + (0.3 * Math.Sin(x / 7.0)) + (0.15 * Math.Cos(y / 5.0)) + (0.04 * random.NextDouble());
                pixels[(y * width) + x] = (ushort)(top * Math.Clamp(wave, 0, 1));
            }
        }

        return pixels;
    }

    public static byte[] Encode(string extension, ushort[] pixels, int width, int height, int bits, params int[] options)
    {
        NativeLibraries.EnsureLoadable();
        using var wide = Mat.FromPixelData(height, width, MatType.CV_16UC1, pixels);
        using var narrow = new Mat();
        wide.ConvertTo(narrow, bits == 8 ? MatType.CV_8UC1 : MatType.CV_16UC1);
        Cv2.ImEncode(extension, narrow, out var file, options);
        return file;
    }

    /// <summary>A PNG whose chunks are sound but whose header and image data are the caller's.</summary>
    public static byte[] Png(int width, int height, byte depth, byte colour, byte[] data)
    {
        var header = new byte[13];
        BinaryPrimitives.WriteInt32BigEndian(header, width);
        BinaryPrimitives.WriteInt32BigEndian(header.AsSpan(4), height);
        header[8] = depth;
        header[9] = colour;
        return [0x89, (byte)'P', (byte)'N', (byte)'G', 13, 10, 26, 10, .. Chunk("IHDR"u8, header), .. Chunk("IDAT"u8, data), .. Chunk("IEND"u8, [])];
    }

    public static byte[] Deflate(byte[] raw)
    {
        using var target = new MemoryStream();
        using (var zlib = new ZLibStream(target, CompressionLevel.Fastest))
        {
            zlib.Write(raw);
        }

        return target.ToArray();
    }

    public static byte[] Chunk(ReadOnlySpan<byte> type, byte[] body)
    {
        var chunk = new byte[12 + body.Length];
        BinaryPrimitives.WriteInt32BigEndian(chunk, body.Length);
        type.CopyTo(chunk.AsSpan(4));
        body.CopyTo(chunk, 8);
        BinaryPrimitives.WriteUInt32BigEndian(chunk.AsSpan(8 + body.Length), Crc32.HashToUInt32(chunk.AsSpan(4, 4 + body.Length)));
        return chunk;
    }
}
