using ElbowAssist.Drawing;
using ElbowAssist.Exchange;
using ElbowAssist.Exchange.Json;
using ElbowAssist.Imaging;
using ElbowAssist.Imaging.Files;
using ElbowAssist.Imaging.Normalisation;
using ElbowAssist.Reading;

namespace ElbowAssist.Cli.Films;

/// <summary>Reads many films side by side and reports them in their order.</summary>
internal static class ReadRun
{
    // The longer side of the film under an overlay; more only makes the files larger.
    private const int OverlaySide = 1600;

    public static ExitCode Run(ReadRequest request, CancellationToken cancellation)
    {
        var films = FilmList.Of(request.Paths);
        var read = ReaderOf(request, films.Count);
        var worst = ExitCode.Done;
        using var progress = new Progress(films.Count);
        var outcomes = films.AsParallel().AsOrdered()
            .WithCancellation(cancellation)
            .WithDegreeOfParallelism(Math.Min(Environment.ProcessorCount, 512))
            .WithMergeOptions(ParallelMergeOptions.NotBuffered)
            .Select(film => ReadOne(film, request, read, cancellation));
        foreach (var outcome in outcomes)
        {
            progress.Step();
            Console.Out.WriteLine(outcome.Summary);
            foreach (var complaint in outcome.Complaints)
            {
                progress.WriteLine(complaint);
            }

            worst = worst.Worse(outcome.Code);
        }

        Console.Out.WriteLine(Caution.Text);
        return worst;
    }

    private static Func<LoadedFilm, CancellationToken, FilmReading> ReaderOf(ReadRequest request, int films)
    {
        if (request.LandmarkFile is { } file)
        {
            var placements = PlacementReading.Open(file, films);
            return (film, _) => placements.Read(film);
        }

        throw new UserErrorException("There is no model to propose landmarks; give --landmarks with landmarks laid beforehand.");
    }

    private static FilmOutcome ReadOne(
        string path, ReadRequest request, Func<LoadedFilm, CancellationToken, FilmReading> read, CancellationToken cancellation)
    {
        var name = Path.GetFileName(path);
        try
        {
            var film = LoadedFilm.Load(path, request.Options);
            var reading = read(film, cancellation);
            reading = reading with { Reasons = [.. reading.Reasons, .. film.Facts.Conflicts] };
            WriteOutputs(request.OutputFolder, name, film, reading, cancellation);
            return FilmOutcome.Of(reading, film.Facts.Conflicts);
        }
        catch (Exception e) when (e is UnreadableFilmException or ExchangeFormatException)
        {
            return FilmOutcome.Unread(name, e.Message.StartsWith(name, StringComparison.Ordinal) ? e.Message : $"{name}: {e.Message}", ExitCode.Unreadable);
        }
        catch (UserErrorException e)
        {
            return FilmOutcome.Unread(name, e.Message, e.Code);
        }
        catch (Exception e) when (e is not OperationCanceledException and not OutOfMemoryException)
        {
            return FilmOutcome.Unread(name, $"{name}: {Program.Unexpected(e)}", ExitCode.Failed);
        }
    }

    // The reading is renamed last: where it stands, the film is complete.
    private static void WriteOutputs(string folder, string name, LoadedFilm film, FilmReading reading, CancellationToken cancellation)
    {
        var shown = DisplayImage.Of(NormalisedFilm.Of(film.Radiograph), OverlaySide);
        var options = new OverlayOptions { Film = new GreyPicture(shown.Width, shown.Height, shown.Pixels) };
        OutputFiles.Write(
            folder,
            [
                (name + OutputNames.OverlaySvg, OverlaySvg.Write(reading, options)),
                (name + OutputNames.OverlayPng, OverlayPng.Write(reading, options)),
                (name + OutputNames.Reading, ReadingJson.Write(reading)),
            ],
            cancellation);
    }
}
