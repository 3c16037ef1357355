using ElbowAssist.Anatomy.Measurements;
using ElbowAssist.Exchange;
using ElbowAssist.Exchange.Dicom.Films;
using ElbowAssist.Exchange.Dicom.Format;
using ElbowAssist.Exchange.Dicom.Reports;
using ElbowAssist.Exchange.Json;
using ElbowAssist.Reading;
using ElbowAssist.Reading.Assembly;

namespace ElbowAssist.Cli.Films;

/// <summary>Readings from landmarks laid beforehand, by a reader or by any program that writes them.</summary>
/// <param name="file">Name of the file, for messages.</param>
/// <param name="content">Its content: JSON, or a DICOM structured report.</param>
internal sealed class PlacementReading(string file, byte[] content) : IReadingSource
{
    /// <summary>Opens a file of placements for a number of films.</summary>
    /// <exception cref="UserErrorException">The file cannot be read or is for one film only.</exception>
    public static PlacementReading Open(string path, int films)
    {
        try
        {
            var placements = new PlacementReading(Path.GetFileName(path), File.ReadAllBytes(path));
            return films == 1 || (!placements.IsReport && LandmarkFile.IsForManyFilms(placements.Content))
                ? placements
                : throw new UserErrorException($"{Path.GetFileName(path)} holds the landmarks of one film; give one film, or COCO keypoints for many.");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new UserErrorException($"The landmarks in {path} cannot be opened; check the name and that it may be read.");
        }
        catch (ExchangeFormatException e)
        {
            throw new UserErrorException($"The landmarks in {path} cannot be used: {e.Message}", ExitCode.Unreadable);
        }
    }

    private ReadOnlyMemory<byte> Content => content;

    private bool IsReport => DicomFilmReader.LooksLikeDicom(content);

    /// <summary>The reading of a film.</summary>
    /// <exception cref="ExchangeFormatException">The file holds no landmarks for this film.</exception>
    public FilmReading Read(LoadedFilm film, CancellationToken cancellation)
    {
        var (radiograph, facts) = (film.Radiograph, film.Facts);
        var placed = IsReport ? LandmarksOfReport(film) : LandmarksOf(radiograph.Facts.FileName, radiograph.Width, radiograph.Height);
        if (facts.View is { } stated && stated != placed.View)
        {
            throw new ExchangeFormatException(
                $"The landmarks in {file} are of the {Vocabularies.View.WordOf(placed.View)} view, but the film is said to be {Vocabularies.View.WordOf(stated)}.");
        }

        return new ReadingAssembler(LimitsFile.Read(), RedrawOptions.Default).Assemble(new ReadingInput
        {
            Tool = ThisTool.Identity,
            Image = new ImageFacts(
                radiograph.Facts.FileName,
                radiograph.Width,
                radiograph.Height,
                facts.RowSpacingMm,
                facts.ColumnSpacingMm,
                facts.SpacingSource,
                radiograph.Facts.Sha256),
            View = new ViewFinding(placed.View, new Dictionary<string, double>(StringComparer.Ordinal), null),
            Side = facts.Side,
            Patient = facts.Patient,
            Context = facts.Context,
            Statements = film.Statements,
            Landmarks = placed.Landmarks,
            Timing = new Dictionary<string, double>(StringComparer.Ordinal) { ["decode"] = film.Decoding.TotalMilliseconds },
        });
    }

    public void Dispose()
    {
        // Nothing is held open.
    }

    private PlacedLandmarks LandmarksOf(string film, int width, int height)
    {
        try
        {
            return LandmarkFile.Read(content, film, width, height);
        }
        catch (ExchangeFormatException e)
        {
            throw new ExchangeFormatException($"The landmarks in {file} cannot be used: {e.Message}", e);
        }
    }

    private PlacedLandmarks LandmarksOfReport(LoadedFilm film)
    {
        try
        {
            var report = StructuredReportReader.Read(content);
            return film.Dicom?.Source.SopInstanceUid == report.FilmSopInstanceUid
                ? new PlacedLandmarks(report.View, report.Landmarks)
                : throw new ExchangeFormatException($"The report {file} is about another film.");
        }
        catch (DicomFormatException e)
        {
            throw new ExchangeFormatException($"The report {file} cannot be used: {e.Message}", e);
        }
    }
}
