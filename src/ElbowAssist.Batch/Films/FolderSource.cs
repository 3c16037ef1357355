using System.Runtime.CompilerServices;

namespace ElbowAssist.Batch.Films;

/// <summary>The films of a folder and all folders below it, in the order of their names.</summary>
/// <param name="root">The folder.</param>
/// <param name="isFilm">Whether a file, by its full path, is to be read.</param>
public sealed class FolderSource(string root, Func<string, bool> isFilm) : IFilmSource
{
    private readonly string root = Path.GetFullPath(root);

    /// <inheritdoc/>
    public async IAsyncEnumerable<ListedFilm> ListAsync([EnumeratorCancellation] CancellationToken cancellation)
    {
        await Task.CompletedTask.ConfigureAwait(false);
        foreach (var path in Below(root))
        {
            cancellation.ThrowIfCancellationRequested();
            yield return new ListedFilm(Path.GetRelativePath(root, path).Replace(Path.DirectorySeparatorChar, '/'));
        }
    }

    /// <inheritdoc/>
    public Task<FilmBytes?> OpenAsync(ListedFilm film, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(film);
        return FileFilms.OpenAsync(root, film.Name, cancellation);
    }

    // One folder at a time is held in memory, so that an archive of millions of films can be walked.
    private IEnumerable<string> Below(string folder)
    {
        string[] files, folders;
        try
        {
            files = [.. Directory.EnumerateFiles(folder).Where(isFilm).Order(StringComparer.Ordinal)];
            folders = [.. Directory.EnumerateDirectories(folder)
                .Where(d => new DirectoryInfo(d) is { LinkTarget: null } info && !info.Name.StartsWith('.')).Order(StringComparer.Ordinal)];
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new BatchException($"The folder {folder} cannot be listed; check that it exists and may be read.", e);
        }

        return files.Concat(folders.SelectMany(Below));
    }
}
