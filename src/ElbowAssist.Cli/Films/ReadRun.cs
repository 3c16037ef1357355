using ElbowAssist.Exchange;
using ElbowAssist.Imaging.Files;
using ElbowAssist.Pipeline.Proposals;
using ElbowAssist.Reading;

namespace ElbowAssist.Cli.Films;

/// <summary>Reads many films side by side and reports them in their order.</summary>
internal static class ReadRun
{
    public static ExitCode Run(ReadRequest request, CancellationToken cancellation)
    {
        var films = FilmList.Of(request.Paths);
        using var source = SourceOf(request, films.Count);
        var worst = ExitCode.Done;
        using var progress = new Progress(films.Count);
        var outcomes = films.AsParallel().AsOrdered()
            .WithCancellation(cancellation)
            .WithDegreeOfParallelism(Math.Min(Environment.ProcessorCount, 512))
            .WithMergeOptions(ParallelMergeOptions.NotBuffered)
            .Select(film => ReadOne(film, request, source, cancellation));
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

    /// <summary>Where readings come from: landmarks laid beforehand, or the models.</summary>
    internal static IReadingSource SourceOf(ReadRequest request, int films) => request.LandmarkFile is { } file
        ? PlacementReading.Open(file, films)
        : ModelReading.Open(request.Model, films);

    /// <summary>The reading of a film, with what contradicts itself among its reasons and apart.</summary>
    internal static (FilmReading Reading, IReadOnlyList<Reason> Conflicts) ReadingOf(LoadedFilm film, IReadingSource source, CancellationToken cancellation)
    {
        var reading = source.Read(film, cancellation);
        IReadOnlyList<Reason> conflicts = [.. film.Facts.Conflicts, .. film.ViewConflict(reading) is { } view ? [view] : Array.Empty<Reason>()];
        return (reading with { Reasons = [.. reading.Reasons, .. conflicts] }, conflicts);
    }

    /// <summary>Reads one film and writes its outputs; whatever goes wrong is in the outcome.</summary>
    internal static FilmOutcome ReadOne(
        string path, ReadRequest request, IReadingSource source, CancellationToken cancellation)
    {
        var name = Path.GetFileName(path);
        try
        {
            var film = LoadedFilm.Load(path, request.Options);
            using var pixels = film.Radiograph;
            if (request.Dicom && film.Dicom is null)
            {
                throw new UserErrorException($"{name} is no DICOM file, so --dicom has no object to report on; leave --dicom out or give the DICOM file.");
            }

            if (request.Output == ReadOutput.Proposals && source is ModelReading models)
            {
                var proposed = models.Propose(film, cancellation);
                OutputFiles.Write(request.OutputFolder, [(name + ProposedFilm.FileSuffix, ProposedFilmJson.Write(proposed))], cancellation);
                return new FilmOutcome($"{name}: proposals written", [], ExitCode.Done);
            }

            var (reading, conflicts) = ReadingOf(film, source, cancellation);
            OutputFiles.Write(request.OutputFolder, FilmOutputs.Of(name, film, reading, request.Dicom, request.Output == ReadOutput.All), cancellation);
            return FilmOutcome.Of(reading, conflicts);
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
}
