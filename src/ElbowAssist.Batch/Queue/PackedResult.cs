using System.IO.Compression;
using ElbowAssist.Batch.Results;
using ElbowAssist.Geometry;

namespace ElbowAssist.Batch.Queue;

/// <summary>A result as it is stored on the server: compressed to about a sixth.</summary>
internal static class PackedResult
{
    public static byte[] Pack(FilmResult result)
    {
        using var packed = new MemoryStream();
        using (var stream = new BrotliStream(packed, CompressionLevel.Fastest))
        {
            stream.Write(result.Json.Span);
        }

        return packed.ToArray();
    }

    /// <summary>The result; null for bytes that are none.</summary>
    public static FilmResult? Unpack(byte[]? packed)
    {
        if (packed is null)
        {
            return null;
        }

        try
        {
            using var stream = new BrotliStream(new MemoryStream(packed), CompressionMode.Decompress);
            using var json = new MemoryStream();
            var buffer = new byte[1 << 16];
            for (int read; (read = stream.Read(buffer)) > 0;)
            {
                if (json.Length + read > InputLimits.ResultBytes)
                {
                    return null;
                }

                json.Write(buffer, 0, read);
            }

            return FilmResult.Parse(json.ToArray());
        }
        catch (Exception e) when (e is InvalidDataException or InvalidOperationException)
        {
            return null;
        }
    }
}
