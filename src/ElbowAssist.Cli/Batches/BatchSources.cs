using ElbowAssist.Batch.Films;
using ElbowAssist.Cli.Films;
using ElbowAssist.Exchange.Dicom.Web;

namespace ElbowAssist.Cli.Batches;

/// <summary>Finds out what kind of source a batch was given.</summary>
internal static class BatchSources
{
    /// <summary>The films that the argument stands for.</summary>
    /// <exception cref="UserErrorException">It is neither folder, list nor address.</exception>
    public static IFilmSource Of(BatchRequest request, HttpClient http)
    {
        if (Uri.TryCreate(request.Source, UriKind.Absolute, out var address) && address.Scheme is "http" or "https")
        {
            return new ArchiveSource(new DicomWebClient(http, address!), request.Query);
        }

        if (Directory.Exists(request.Source))
        {
            return new FolderSource(request.Source, FilmList.IsFilm);
        }

        return File.Exists(request.Source) && request.Source.EndsWith(".json", StringComparison.OrdinalIgnoreCase)
            ? new DatasetSource(request.Source)
            : throw new UserErrorException($"{request.Source} is no folder, no COCO file (.json) and no address of a DICOMweb service; name one of them.");
    }
}
