using ElbowAssist.Anatomy;
using ElbowAssist.Drawing;
using ElbowAssist.Exchange.Dicom.Presentation;
using ElbowAssist.Exchange.Dicom.Reports;
using ElbowAssist.Exchange.Json;
using ElbowAssist.Imaging;
using ElbowAssist.Imaging.Normalisation;
using ElbowAssist.Reading;

namespace ElbowAssist.Cli.Films;

/// <summary>The files written for a film.</summary>
internal static class FilmOutputs
{
    // The longer side of the film under an overlay; more only makes the files larger.
    private const int OverlaySide = 1600;

    /// <summary>Names and contents. The reading comes last: where it stands, the film is complete.</summary>
    /// <exception cref="UserErrorException">Objects for the archive are asked for while the side is contradicted.</exception>
    public static IReadOnlyList<(string Name, byte[] Content)> Of(string film, LoadedFilm loaded, FilmReading reading, bool dicom, bool overlays = true) =>
    [
        .. overlays ? Overlays(film, loaded, reading) : [],
        .. dicom ? DicomObjects(film, loaded, reading) : [],
        (film + OutputNames.Reading, ReadingJson.Write(reading)),
    ];

    private static IEnumerable<(string Name, byte[] Content)> Overlays(string film, LoadedFilm loaded, FilmReading reading)
    {
        using var normalised = NormalisedFilm.Of(loaded.Radiograph);
        var shown = DisplayImage.Of(normalised, OverlaySide);
        var options = new OverlayOptions { Film = new GreyPicture(shown.Width, shown.Height, shown.Pixels) };
        yield return (film + OutputNames.OverlaySvg, OverlaySvg.Write(reading, options));
        yield return (film + OutputNames.OverlayPng, OverlayPng.Write(reading, options));
    }

    private static IEnumerable<(string Name, byte[] Content)> DicomObjects(string film, LoadedFilm loaded, FilmReading reading)
    {
        if (reading.Side == Side.Unknown && loaded.Facts.Conflicts.Any(c => c.Code == "side-contradicted"))
        {
            throw new UserErrorException($"{film}: the side is contradicted, so nothing is exported; settle it with --side left or --side right.");
        }

        var source = loaded.Dicom!.Source;
        var now = TimeProvider.System.GetLocalNow();
        yield return (film + OutputNames.StructuredReport, StructuredReport.Write(reading, source, new ReportOptions(now)));
        yield return (film + OutputNames.PresentationState, PresentationState.Write(reading, source, now));
    }
}
