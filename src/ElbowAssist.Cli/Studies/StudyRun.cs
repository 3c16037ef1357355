using System.Globalization;
using ElbowAssist.Cli.Films;
using ElbowAssist.Drawing;
using ElbowAssist.Exchange;
using ElbowAssist.Exchange.Json.Studies;
using ElbowAssist.Imaging;
using ElbowAssist.Imaging.Files;
using ElbowAssist.Imaging.Normalisation;
using ElbowAssist.Reading;
using ElbowAssist.Reading.Assembly;
using ElbowAssist.Reading.Studies;
using ElbowAssist.Reading.Walks;

namespace ElbowAssist.Cli.Studies;

/// <summary>Reads the films of one patient and puts them together with what the reader marked.</summary>
internal static class StudyRun
{
    // A film on the page is half a sheet wide; more only makes the page larger.
    private const int PictureSide = 1200;

    public static ExitCode Run(StudyRequest request, CancellationToken cancellation)
    {
        var paths = FilmList.Of(request.Films);
        var given = Given(request.StudyFile);
        var statements = WalkMarks.Statements(given.Walk, given.StatedMaturity);
        var films = new List<StudyFilm>();
        var pictures = new Dictionary<string, GreyPicture>(StringComparer.Ordinal);
        using (var source = SourceOf(request, paths.Count))
        {
            foreach (var path in paths)
            {
                cancellation.ThrowIfCancellationRequested();
                Add(path, request, statements, source, films, pictures, cancellation);
            }
        }

        var study = StudyAssembler.Assemble(given with { Films = films });
        OutputFiles.Write(request.OutputFolder, StudyOutputs.Of(study, pictures), cancellation);
        return Report(study, request.OutputFolder);
    }

    private static IReadingSource SourceOf(StudyRequest request, int films) => request.LandmarkFile is { } file
        ? PlacementReading.Open(file, films)
        : ModelReading.Open(request.Model, films);

    private static StudyInput Given(string? file)
    {
        if (file is null)
        {
            return new() { Tool = ThisTool.Identity, Films = [] };
        }

        try
        {
            return StudyJson.Read(File.ReadAllBytes(file), ThisTool.Identity);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new UserErrorException($"The study file {file} cannot be opened; check the name and that it may be read.");
        }
        catch (ExchangeFormatException e)
        {
            throw new UserErrorException($"The study file {Path.GetFileName(file)} cannot be used: {e.Message}", ExitCode.Unreadable);
        }
    }

    private static void Add(
        string path, StudyRequest request, ReaderStatements statements, IReadingSource source, List<StudyFilm> films, Dictionary<string, GreyPicture> pictures, CancellationToken cancellation)
    {
        var name = Path.GetFileName(path);
        try
        {
            var film = LoadedFilm.Load(path, request.Options) with { Statements = statements };
            var reading = source.Read(film, cancellation);
            reading = reading with { Reasons = [.. reading.Reasons, .. film.Facts.Conflicts] };
            films.Add(new StudyFilm(name, reading, [.. film.Facts.SideStatements.Select(s => new SideStatement(s.Source, s.Side))]));
            var shown = DisplayImage.Of(NormalisedFilm.Of(film.Radiograph), PictureSide);
            pictures[name] = new GreyPicture(shown.Width, shown.Height, shown.Pixels);
        }
        catch (Exception e) when (e is UnreadableFilmException or ExchangeFormatException)
        {
            // A study with a film missing could hide the view that matters, so none is made.
            throw new UserErrorException(e.Message.StartsWith(name, StringComparison.Ordinal) ? e.Message : $"{name}: {e.Message}", ExitCode.Unreadable);
        }
    }

    private static ExitCode Report(Study study, string folder)
    {
        foreach (var film in study.Films)
        {
            Console.Out.WriteLine(FilmOutcome.Of(film.Reading, []).Summary);
        }

        foreach (var conflict in study.Conflicts)
        {
            Console.Error.WriteLine(conflict.Text);
        }

        Console.Out.WriteLine(study.ExportIsStopped
            ? $"No report was made; the study is in {Path.Combine(folder, StudyOutputs.Study)}."
            : string.Create(CultureInfo.InvariantCulture,
                $"{study.Films.Count} films, {study.Prompts.Count} prompts; the report is {Path.Combine(folder, StudyOutputs.Page)}."));
        Console.Out.WriteLine(Caution.Text);
        return study.ExportIsStopped || study.Films.Any(f => f.Reading.Adequacy.Refused) ? ExitCode.Refused : ExitCode.Done;
    }
}
