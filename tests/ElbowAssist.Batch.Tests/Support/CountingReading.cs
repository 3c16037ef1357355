using System.Collections.Concurrent;
using System.Security.Cryptography;
using System.Text;
using ElbowAssist.Batch.Films;
using ElbowAssist.Batch.Results;
using ElbowAssist.Batch.Running;

namespace ElbowAssist.Batch.Tests.Support;

/// <summary>Gives each film a result that tells its bytes, and counts how often each was read.</summary>
internal sealed class CountingReading : IFilmReading
{
    public Recipe Recipe { get; init; } = new(new string('a', 64), "0.1.0-test");

    public ConcurrentDictionary<string, int> Reads { get; } = new(StringComparer.Ordinal);

    /// <summary>Films, by file name, that nobody can read.</summary>
    public ISet<string> Stubborn { get; init; } = new HashSet<string>(StringComparer.Ordinal);

    /// <summary>Called before each film.</summary>
    public Action? Before { get; init; }

    public static FilmResult ResultOf(FilmBytes film) =>
        FilmResult.Unreadable($"{film.FileName} {Convert.ToHexStringLower(SHA256.HashData(film.Content.Span))} {Encoding.UTF8.GetString((film.Sidecar ?? default).Span)}");

    public FilmResult? Read(FilmBytes film, ReadOnlyMemory<byte> options)
    {
        Before?.Invoke();
        Reads.AddOrUpdate(film.FileName, 1, (_, n) => n + 1);
        return Stubborn.Contains(film.FileName) ? null : ResultOf(film);
    }
}
