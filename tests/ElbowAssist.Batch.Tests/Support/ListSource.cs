using System.Runtime.CompilerServices;
using ElbowAssist.Batch.Films;

namespace ElbowAssist.Batch.Tests.Support;

/// <summary>Films held in memory.</summary>
internal sealed class ListSource(IReadOnlyList<(string Name, byte[] Content)> films) : IFilmSource
{
    /// <summary>Called with the name of each film before it is opened.</summary>
    public Action<string>? Before { get; init; }

    /// <summary>Films of a few bytes, and the second of more than a message carries.</summary>
    public static ListSource Of(int count, Action<string>? before = null) => new([.. Enumerable.Range(0, count).Select(i => (FormattableString.Invariant($"{i}.png"), i == 1 ? new byte[700_000] : BitConverter.GetBytes(i)))]) { Before = before };

    public async IAsyncEnumerable<ListedFilm> ListAsync([EnumeratorCancellation] CancellationToken cancellation)
    {
        await Task.Yield();
        foreach (var (name, _) in films)
        {
            cancellation.ThrowIfCancellationRequested();
            yield return new ListedFilm(name);
        }
    }

    public Task<FilmBytes?> OpenAsync(ListedFilm film, CancellationToken cancellation)
    {
        Before?.Invoke(film.Name);
        return Task.FromResult<FilmBytes?>(new FilmBytes(film.Name, films.Single(f => f.Name == film.Name).Content, null));
    }
}
