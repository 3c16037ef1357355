using System.Text;
using System.Text.Json;
using ElbowAssist.Drawing;
using ElbowAssist.Drawing.Growth;
using ElbowAssist.Drawing.Report;
using ElbowAssist.Imaging;
using ElbowAssist.Imaging.Normalisation;
using ElbowAssist.Reading.Studies;
using ElbowAssist.Reading.Walks;
using ElbowAssist.Store;
using ElbowAssist.Web.Guard;
using ElbowAssist.Web.Problems;
using ElbowAssist.Web.Readings;
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
        WithReport(study, open, (found, assembled) => Results.Bytes(StudyFiles.Zip(StudyFiles.Of(assembled, Films(found), null, clock)), "application/zip", "elbow-study.zip"));

    private static IResult Backup(string study, OpenStudies open, StudyStore store) => open.Find(study) is not { } found
        ? Problem.NotFound("study")
        : Results.Bytes(StudyFiles.Zip(
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

    private static IReadOnlyList<ReadFilm> Films(OpenStudy study) =>
    [
        .. from film in study.Films
           let reading = study.Reading(film)
           where reading is not null
           let opened = film.Opened.Result
           select new ReadFilm($"{film.Stored.Id}-{film.Stored.Name}", reading, opened.Radiograph, opened.Dicom, []),
    ];
}
