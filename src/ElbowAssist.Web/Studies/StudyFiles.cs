using System.IO.Compression;
using System.Text;
using ElbowAssist.Drawing;
using ElbowAssist.Drawing.Report;
using ElbowAssist.Exchange.Dicom.Presentation;
using ElbowAssist.Exchange.Dicom.Reports;
using ElbowAssist.Exchange.Fhir;
using ElbowAssist.Exchange.Json;
using ElbowAssist.Exchange.Json.Coco;
using ElbowAssist.Exchange.Json.Studies;
using ElbowAssist.Reading.Studies;
using ElbowAssist.Web.Readings;

namespace ElbowAssist.Web.Studies;

/// <summary>A study as files for other programs: its report, and of every film all that is written.</summary>
internal static class StudyFiles
{
    /// <summary>The files.</summary>
    /// <param name="study">The study; its films are known by the names of <paramref name="films"/>.</param>
    /// <param name="films">The films in the study's order.</param>
    /// <param name="patient">Reference to the patient for FHIR; null leaves FHIR out.</param>
    /// <param name="clock">Clock.</param>
    public static IEnumerable<(string Name, byte[] Content)> Of(Study study, IReadOnlyList<ReadFilm> films, string? patient, TimeProvider clock)
    {
        GreyPicture[] shown = [.. films.Select(f => f.Picture)];
        var pictures = study.Films.Zip(shown).ToDictionary(f => f.First.Id, f => f.Second, StringComparer.Ordinal);
        yield return ("study.json", StudyJson.Write(study));
        yield return ("report.html", StudyReport.Html(study, pictures));
        yield return ("report.txt", Encoding.UTF8.GetBytes(StudyReport.Text(study)));
        foreach (var (film, picture) in films.Zip(shown))
        {
            var (name, reading, dicom) = (film.Name, film.Reading, film.Dicom);
            yield return ($"{name}.reading.json", ReadingJson.Write(reading));
            yield return ($"{name}.overlay.svg", OverlaySvg.Write(reading, new OverlayOptions { Film = picture }));
            yield return ($"{name}.overlay.png", OverlayPng.Write(reading, new OverlayOptions { Film = picture }));
            if (patient is not null)
            {
                yield return ($"{name}.fhir.json", FhirBundle.Write(reading, patient, clock.GetLocalNow(), dicom));
            }

            if (dicom is not null)
            {
                yield return ($"{name}.sr.dcm", StructuredReport.Write(reading, dicom, new ReportOptions(clock.GetLocalNow())));
                yield return ($"{name}.gsps.dcm", PresentationState.Write(reading, dicom, clock.GetLocalNow()));
            }
        }

        CocoFilm[] laid = [.. films.Where(f => f.Reading.Landmarks.Any(l => l.Position is not null)).Select(f => new CocoFilm(f.Name, f.Reading.Image.Width, f.Reading.Image.Height, f.Reading.View.Name, f.Reading.Landmarks))];
        if (laid.Length > 0)
        {
            yield return ("landmarks.coco.json", CocoKeypoints.Write(laid));
        }
    }

    public static byte[] Zip(IEnumerable<(string Name, byte[] Content)> files)
    {
        using var buffer = new MemoryStream();
        using (var zip = new ZipArchive(buffer, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var (name, content) in files)
            {
                using var entry = zip.CreateEntry(name, CompressionLevel.Fastest).Open();
                entry.Write(content);
            }
        }

        return buffer.ToArray();
    }
}
