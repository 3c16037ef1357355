namespace ElbowAssist.Batch.Films;

/// <summary>Where the films of a batch come from.</summary>
public interface IFilmSource
{
    /// <summary>The films, always in the same order; asked for more than once in a run.</summary>
    /// <exception cref="BatchException">The source cannot be listed.</exception>
    IAsyncEnumerable<ListedFilm> ListAsync(CancellationToken cancellation);

    /// <summary>A film's bytes; null where it cannot be opened, which may pass.</summary>
    Task<FilmBytes?> OpenAsync(ListedFilm film, CancellationToken cancellation);
}
