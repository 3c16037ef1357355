using ElbowAssist.Exchange.Dicom.Web;
using ElbowAssist.Exchange.Watching;
using ElbowAssist.Reading;

namespace ElbowAssist.Cli.Films;

/// <summary>Reads films one after the other as they arrive in a folder. A film that has its reading already is left alone.</summary>
internal static class WatchRun
{
    public static async Task<int> RunAsync(string folder, ReadRequest request, Uri? archive, CancellationToken cancellation)
    {
        var full = Path.GetFullPath(folder);
        if (!Directory.Exists(full))
        {
            throw new UserErrorException($"The folder {folder} does not exist; create it or check the name.");
        }

        using var source = ReadRun.SourceOf(request, films: 1);
        using var http = archive is null ? null : new HttpClient();
        var client = archive is null ? null : new DicomWebClient(http!, archive);
        var watched = new WatchedFolder(full, path => FilmList.IsFilm(path) && !IsRead(path, request.OutputFolder));
        Console.Out.WriteLine($"Watching {folder}; stop with Ctrl-C. {Caution.Text}");
        await foreach (var film in watched.CompleteFilesAsync(cancellation).ConfigureAwait(false))
        {
            var isDicom = DicomFiles.StartsAsDicom(film);
            var outcome = ReadRun.ReadOne(film, request with { Dicom = isDicom }, source, cancellation);
            Console.Out.WriteLine(outcome.Summary);
            foreach (var complaint in outcome.Complaints.Concat(client is null || !isDicom ? [] : await StoreAsync(client, film, request.OutputFolder, cancellation).ConfigureAwait(false)))
            {
                await Console.Error.WriteLineAsync(complaint).ConfigureAwait(false);
            }
        }

        return (int)ExitCode.Done;
    }

    private static bool IsRead(string film, string outputFolder)
    {
        var reading = new FileInfo(Path.Combine(outputFolder, Path.GetFileName(film) + OutputNames.Reading));
        return reading.Exists && reading.LastWriteTimeUtc >= File.GetLastWriteTimeUtc(film);
    }

    private static async Task<IReadOnlyList<string>> StoreAsync(DicomWebClient client, string film, string folder, CancellationToken cancellation)
    {
        var name = Path.GetFileName(film);
        var files = new[] { OutputNames.StructuredReport, OutputNames.PresentationState }
            .Select(suffix => Path.Combine(folder, name + suffix)).Where(File.Exists)
            .Select(path => new ReadOnlyMemory<byte>(File.ReadAllBytes(path)));
        var outcomes = await client.StoreAsync(files, cancellation).ConfigureAwait(false);
        return [.. outcomes.Where(o => o.State == StoreState.Failed).Select(o => $"{name}: {o.Sentence}").Distinct()];
    }
}
