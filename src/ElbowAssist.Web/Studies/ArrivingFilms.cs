using System.Security.Cryptography;
using ElbowAssist.Exchange;
using ElbowAssist.Exchange.Json.Facts;
using ElbowAssist.Exchange.Watching;
using ElbowAssist.Imaging.Files;
using ElbowAssist.Store;
using ElbowAssist.Web.Films;
using Microsoft.Extensions.Hosting;

namespace ElbowAssist.Web.Studies;

/// <summary>
/// Films that arrive in a watched folder, as a DICOM receiver writes them: those of one DICOM study come together, any
/// other film is a study of its own, so that films of two patients are never mixed. A film that is there again after a
/// restart is known, and one whose study was deleted does not come back; a reader may still open it by hand.
/// </summary>
internal sealed class ArrivingFilms(ServiceOptions options, StudyStore store, OpenStudies open, IFilmDesk desk) : BackgroundService
{
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        if (options.WatchFolder is not { } folder)
        {
            return;
        }

        var watched = new WatchedFolder(Path.GetFullPath(folder), p => Path.GetFileName(p) is var name && !name.StartsWith('.') && !name.EndsWith(".json", StringComparison.OrdinalIgnoreCase));
        await foreach (var path in watched.CompleteFilesAsync(stoppingToken).ConfigureAwait(false))
        {
            try
            {
                Add(path, await File.ReadAllBytesAsync(path, stoppingToken).ConfigureAwait(false));
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException or StoreException)
            {
                // The file went away again, or cannot be kept: the next one is tried all the same.
                continue;
            }
        }
    }

    private void Add(string path, byte[] content)
    {
        if (store.WasDeleted(content))
        {
            return;
        }

        var sidecar = path + SidecarJson.Suffix;
        var stated = File.Exists(sidecar) ? StudyEndpoints.StatedOrNull(File.ReadAllText(sidecar)) : null;
        var source = DicomStudy(content) is { } uid ? StudySource.Dicom(uid) : StudySource.File(SHA256.HashData(content));
        var study = store.FindOrCreate(source, "Arrived in the watched folder", "watched");
        open.Find(study.Id)!.Add(Path.GetFileName(path), content, stated, null);
    }

    private string? DicomStudy(byte[] content)
    {
        try
        {
            return desk.Open(content, "film", []).Dicom?.StudyInstanceUid;
        }
        catch (Exception e) when (e is UnreadableFilmException or ExchangeFormatException)
        {
            // Kept as a study of its own, where the page names what is wrong with it.
            return null;
        }
    }
}
