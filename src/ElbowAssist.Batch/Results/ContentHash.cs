using System.Buffers.Binary;
using System.Security.Cryptography;
using System.Text;
using ElbowAssist.Batch.Films;

namespace ElbowAssist.Batch.Results;

/// <summary>The hash of everything a film's reading depends on: its file, its file name, its sidecar, the options of the run.</summary>
public static class ContentHash
{
    /// <summary>64 lower-case hexadecimal digits.</summary>
    /// <param name="film">The film.</param>
    /// <param name="options">Facts given as options, as a sidecar.</param>
    public static string Of(FilmBytes film, ReadOnlyMemory<byte> options)
    {
        ArgumentNullException.ThrowIfNull(film);
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        Add(hash, Encoding.UTF8.GetBytes(film.FileName));
        Add(hash, film.Content.Span);
        Add(hash, options.Span);
        if (film.Sidecar is { } sidecar)
        {
            Add(hash, sidecar.Span);
        }

        return Convert.ToHexStringLower(hash.GetHashAndReset());
    }

    // With its length before each part, no two different films can be told as the same bytes.
    private static void Add(IncrementalHash hash, ReadOnlySpan<byte> part)
    {
        Span<byte> length = stackalloc byte[sizeof(long)];
        BinaryPrimitives.WriteInt64LittleEndian(length, part.Length);
        hash.AppendData(length);
        hash.AppendData(part);
    }
}
