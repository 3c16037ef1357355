using ElbowAssist.Anatomy.Measurements;
using ElbowAssist.Drawing;
using ElbowAssist.Exchange.Dicom.Films;
using ElbowAssist.Exchange.Json.Facts;
using ElbowAssist.Imaging;
using ElbowAssist.Reading;
using ElbowAssist.Reading.Assembly;
using ElbowAssist.Reading.Studies;
using ElbowAssist.Web.Films;
using ElbowAssist.Web.Studies;

namespace ElbowAssist.Web.Readings;

/// <summary>A film with its reading, and what its pictures and DICOM objects need.</summary>
/// <param name="Name">File name without a folder.</param>
/// <param name="Reading">Its reading.</param>
/// <param name="Radiograph">Its pixels.</param>
/// <param name="Dicom">The object it came from, or null.</param>
/// <param name="Sides">Every statement of its side.</param>
internal sealed record ReadFilm(string Name, FilmReading Reading, Radiograph Radiograph, DicomSource? Dicom, IReadOnlyList<SideStatement> Sides)
{
    /// <summary>The film as it is shown; made when a format asks for it, which most do not.</summary>
    public GreyPicture Picture => ReportEndpoints.Picture(Radiograph);

    /// <summary>About how many bytes of memory it takes.</summary>
    public long Weight => (Dicom is null ? 2L : 4L) * Radiograph.Width * Radiograph.Height;

    /// <summary>Reads a film with the models.</summary>
    /// <exception cref="Imaging.Files.UnreadableFilmException">It cannot be decoded.</exception>
    /// <exception cref="Exchange.ExchangeFormatException">What is said does not fit it.</exception>
    public static ReadFilm Of(IFilmDesk desk, byte[] content, string name, IReadOnlyList<FilmFacts> stated, CancellationToken cancellation)
    {
        using var activity = Watching.Telemetry.Source.StartActivity("read film");
        var started = System.Diagnostics.Stopwatch.GetTimestamp();
        var film = desk.Open(content, name, stated);
        var reading = new ReadingAssembler(desk.Limits, RedrawOptions.Default).Assemble(desk.Propose(film, null, cancellation));
        reading = reading with { Reasons = [.. reading.Reasons, .. film.Facts.Conflicts] };
        Watching.Telemetry.FilmsRead.Add(1);
        Watching.Telemetry.ReadSeconds.Record(System.Diagnostics.Stopwatch.GetElapsedTime(started).TotalSeconds);
        return new(name, reading, film.Radiograph, film.Dicom, [.. film.Facts.SideStatements.Select(s => new SideStatement(s.Source, s.Side))]);
    }
}
