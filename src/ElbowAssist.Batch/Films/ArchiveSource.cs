using System.Runtime.CompilerServices;
using ElbowAssist.Exchange.Dicom.Web;

namespace ElbowAssist.Batch.Films;

/// <summary>The elbow films that a DICOMweb archive finds, by SOP instance UID.</summary>
/// <param name="archive">The archive.</param>
/// <param name="query">Which films.</param>
public sealed class ArchiveSource(DicomWebClient archive, FilmQuery query) : IFilmSource
{
    private IReadOnlyList<FilmReference>? found;

    /// <inheritdoc/>
    public async IAsyncEnumerable<ListedFilm> ListAsync([EnumeratorCancellation] CancellationToken cancellation)
    {
        try
        {
            found ??= await archive.FindFilmsAsync(query, cancellation).ConfigureAwait(false);
        }
        catch (DicomWebException e)
        {
            throw new BatchException(e.Message, e);
        }

        foreach (var film in found)
        {
            yield return new ListedFilm(film.SopInstanceUid, film);
        }
    }

    /// <inheritdoc/>
    public async Task<FilmBytes?> OpenAsync(ListedFilm film, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(film);
        try
        {
            var content = await archive.FetchAsync(film.Reference!, cancellation).ConfigureAwait(false);
            return new FilmBytes(film.Name + ".dcm", content, Sidecar: null);
        }
        catch (DicomWebException)
        {
            return null;
        }
    }
}
