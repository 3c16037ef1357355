using System.Runtime.CompilerServices;
using ElbowAssist.Exchange;
using ElbowAssist.Exchange.Json.Coco;

namespace ElbowAssist.Batch.Films;

/// <summary>The films that a COCO keypoints file names, below the folder it lies in, in the order of the file.</summary>
public sealed class DatasetSource : IFilmSource
{
    private readonly string root;
    private readonly IReadOnlyList<string> files;

    /// <summary>Reads the list of films.</summary>
    /// <exception cref="BatchException">The file is no such list or cannot be opened.</exception>
    public DatasetSource(string cocoFile)
    {
        ArgumentException.ThrowIfNullOrEmpty(cocoFile);
        root = Path.GetDirectoryName(Path.GetFullPath(cocoFile))!;
        try
        {
            files = [.. CocoKeypoints.FilesOf(File.ReadAllBytes(cocoFile)).Distinct(StringComparer.Ordinal)];
        }
        catch (ExchangeFormatException e)
        {
            throw new BatchException($"{cocoFile} is no list of films: {e.Message}", e);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new BatchException($"{cocoFile} cannot be opened; check the name and that it may be read.", e);
        }
    }

    /// <inheritdoc/>
    public async IAsyncEnumerable<ListedFilm> ListAsync([EnumeratorCancellation] CancellationToken cancellation)
    {
        await Task.CompletedTask.ConfigureAwait(false);
        foreach (var file in files)
        {
            cancellation.ThrowIfCancellationRequested();
            yield return new ListedFilm(file);
        }
    }

    /// <inheritdoc/>
    public Task<FilmBytes?> OpenAsync(ListedFilm film, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(film);
        return FileFilms.OpenAsync(root, film.Name, cancellation);
    }
}
