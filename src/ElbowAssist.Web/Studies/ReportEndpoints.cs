using System.IO.Compression;
using System.Text;
using System.Text.Json;
using ElbowAssist.Drawing;
using ElbowAssist.Drawing.Growth;
using ElbowAssist.Drawing.Report;
using ElbowAssist.Exchange.Dicom.Presentation;
using ElbowAssist.Exchange.Dicom.Reports;
using ElbowAssist.Exchange.Json;
using ElbowAssist.Exchange.Json.Coco;
using ElbowAssist.Exchange.Json.Studies;
using ElbowAssist.Imaging;
using ElbowAssist.Imaging.Normalisation;
using ElbowAssist.Reading.Studies;
using ElbowAssist.Reading.Walks;
using ElbowAssist.Store;
using ElbowAssist.Web.Guard;
using ElbowAssist.Web.Problems;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace ElbowAssist.Web.Studies;

/// <summary>What comes out of a study: report, plain text, files for other programs, and all of it for taking away.</summary>
internal static class ReportEndpoints
{
    private const int PictureSide = 1200;

    public static void Map(IEndpointRouteBuilder routes)
    {
        var study = routes.MapGroup("/api/studies/{study}").WithTags("Report and files");
        study.MapGet("/report.html", Html).WithSummary("The report as a page, once the read is closed").Produces(200, contentType: "text/html").ProducesProblem(404).ProducesProblem(409);
        study.MapGet("/report.txt", Text).WithSummary("The report as plain text, once the read is closed").Produces(200, contentType: "text/plain").ProducesProblem(404).ProducesProblem(409);
        study.MapGet("/export.zip", Export).WithSummary("Readings, overlays, DICOM objects and the study, once the read is closed").Produces(200, contentType: "application/zip").ProducesProblem(404).ProducesProblem(409);
        study.MapGet("/backup.zip", Backup).WithSummary("Everything kept of the study: films and every entry").Produces(200, contentType: "application/zip").ProducesProblem(404);
        study.MapGet("/growth.svg", Growth).WithSummary("The ossification centres at this age, once the reader has marked them").Produces(200, contentType: "image/svg+xml").ProducesProblem(404).ProducesProblem(409);
    }

    private static IResult Html(string study, OpenStudies open, HttpResponse response) => WithReport(study, open, (found, assembled) =>
    {
        response.Headers.ContentSecurityPolicy = AnswerHeaders.Report;
        return Results.Bytes(StudyReport.Html(assembled, Pictures(found)), "text/html; charset=utf-8");
    });

    private static IResult Text(string study, OpenStudies open) =>
        WithReport(study, open, (_, assembled) => Results.Text(StudyReport.Text(assembled), "text/plain", Encoding.UTF8));

    private static IResult Export(string study, OpenStudies open, TimeProvider clock) =>
        WithReport(study, open, (found, assembled) => Results.Bytes(Zip(Files(found, assembled, clock)), "application/zip", "elbow-study.zip"));

    private static IResult Backup(string study, OpenStudies open, StudyStore store) => open.Find(study) is not { } found
        ? Problem.NotFound("study")
        : Results.Bytes(Zip(
            [
                ("study.json", JsonSerializer.SerializeToUtf8Bytes(found.Stored, JsonSerializerOptions.Web)),
                ("entries.jsonl", Encoding.UTF8.GetBytes(store.Journal(study))),
                .. found.Stored.Films.Select(f => ($"films/{f.Id}-{f.Name}", store.Content(study, f.Id) ?? [])),
            ]), "application/zip", "elbow-backup.zip");

    private static IResult Growth(string study, OpenStudies open)
    {
        if (open.Find(study) is not { } found || found.Assemble() is not { } assembled)
        {
            return Problem.NotFound("study with a film that was read");
        }

        if (!Curtain.Shows(found.Status, WalkTopic.GrowthCentres) && !Curtain.ReportMayBeMade(found.Status))
        {
            return Problem.NotYet("walk.own-answer-first", "Mark the growth centres before the published ages are shown.");
        }

        return Results.Bytes(GrowthStripSvg.Write(assembled.Patient, assembled.Marks.GrowthCentres), "image/svg+xml");
    }

    private static IResult WithReport(string study, OpenStudies open, Func<OpenStudy, Study, IResult> make)
    {
        if (open.Find(study) is not { } found)
        {
            return Problem.NotFound("study");
        }

        if (!Curtain.ReportMayBeMade(found.Status) || found.Assemble() is not { } assembled)
        {
            return Problem.NotYet("walk.not-closed", "Close the read before its report is made: until then it would show what you have not answered yet.");
        }

        return assembled.ExportIsStopped
            ? Problem.NotYet("study.contradicted", string.Join(' ', assembled.Conflicts.Where(c => c.StopsExport).Select(c => c.Text)))
            : make(found, assembled);
    }

    private static Dictionary<string, GreyPicture> Pictures(OpenStudy study) => study.Films
        .Where(f => f.Opened.IsCompletedSuccessfully)
        .ToDictionary(f => f.Stored.Id, f => Picture(f.Opened.Result.Radiograph), StringComparer.Ordinal);

    internal static GreyPicture Picture(Radiograph film)
    {
        var shown = DisplayImage.Of(NormalisedFilm.Of(film), PictureSide);
        return new GreyPicture(shown.Width, shown.Height, shown.Pixels);
    }

    private static IEnumerable<(string Name, byte[] Content)> Files(OpenStudy found, Study study, TimeProvider clock)
    {
        yield return ("study.json", StudyJson.Write(study));
        yield return ("report.html", StudyReport.Html(study, Pictures(found)));
        yield return ("report.txt", Encoding.UTF8.GetBytes(StudyReport.Text(study)));
        List<CocoFilm> laid = [];
        foreach (var film in found.Films)
        {
            if (found.Reading(film) is not { } reading)
            {
                continue;
            }

            var stem = $"{film.Stored.Id}-{film.Stored.Name}";
            yield return ($"{stem}.reading.json", ReadingJson.Write(reading));
            yield return ($"{stem}.overlay.svg", OverlaySvg.Write(reading, new OverlayOptions { Film = Picture(film.Opened.Result.Radiograph) }));
            if (film.Opened.Result.Dicom is { } source)
            {
                yield return ($"{stem}.sr.dcm", StructuredReport.Write(reading, source, new ReportOptions(clock.GetLocalNow())));
                yield return ($"{stem}.gsps.dcm", PresentationState.Write(reading, source, clock.GetLocalNow()));
            }

            if (reading.Landmarks.Any(l => l.Position is not null))
            {
                laid.Add(new CocoFilm(film.Stored.Name, reading.Image.Width, reading.Image.Height, reading.View.Name, reading.Landmarks));
            }
        }

        if (laid.Count > 0)
        {
            yield return ("landmarks.coco.json", CocoKeypoints.Write(laid));
        }
    }

    private static byte[] Zip(IEnumerable<(string Name, byte[] Content)> files)
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
