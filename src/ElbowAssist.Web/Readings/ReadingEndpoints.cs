using ElbowAssist.Anatomy.Measurements;
using ElbowAssist.Exchange;
using ElbowAssist.Exchange.Json;
using ElbowAssist.Geometry;
using ElbowAssist.Reading;
using ElbowAssist.Reading.Assembly;
using ElbowAssist.Web.Films;
using ElbowAssist.Web.Problems;
using ElbowAssist.Web.Studies;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace ElbowAssist.Web.Readings;

/// <summary>Readings for other programs: a film in, a reading out, in any format; nothing is kept on disk.</summary>
internal static class ReadingEndpoints
{
    public static void Map(IEndpointRouteBuilder routes)
    {
        var readings = routes.MapGroup("/api/readings").WithTags("Readings for programs");
        readings.MapPost("", Read).WithSummary("Read a film, the file as the body; with \"Prefer: respond-async\" as a job")
            .WithDescription("The same film with the same facts is read once. 429 where too many wait, 503 where a reading takes too long.")
            .Accepts<byte[]>("application/octet-stream", "*/*").Produces(200).Produces<ReadingJob>(202)
            .ProducesProblem(400).ProducesProblem(408).ProducesProblem(409).ProducesProblem(413).ProducesProblem(422).ProducesProblem(429).ProducesProblem(503);
        readings.MapGet("/{key}", Get).WithSummary("A reading made before, in any format").Produces(200).ProducesProblem(400).ProducesProblem(404).ProducesProblem(409);
        readings.MapGet("/jobs/{job}", (string job, ReadingJobs jobs) => jobs.Find(job) is { } found ? Results.Ok(found) : Problem.NotFound("job"))
            .WithSummary("State of a job").Produces<ReadingJob>().ProducesProblem(404);
        readings.MapGet("/jobs/{job}/events", (string job, ReadingJobs jobs, CancellationToken cancellation) => jobs.Find(job) is null
                ? Problem.NotFound("job")
                : TypedResults.ServerSentEvents(jobs.Follow(job, cancellation), "state"))
            .WithSummary("States of a job as server-sent events, until it ends").Produces(200, contentType: "text/event-stream").ProducesProblem(404);
        readings.MapDelete("/jobs/{job}", (string job, ReadingJobs jobs) => jobs.Cancel(job) ? Results.NoContent() : Problem.NotFound("job"))
            .WithSummary("Cancel a job").Produces(204).ProducesProblem(404);
        routes.MapPost("/api/measurements", Measure).WithTags("Readings for programs")
            .WithSummary("Measure on landmarks laid elsewhere: the landmarks block of a reading, or COCO keypoints, as the body")
            .Accepts<byte[]>("application/json", "*/*").Produces(200, contentType: "application/json").ProducesProblem(400).ProducesProblem(413);
    }

    private static async Task<IResult> Read(
        [AsParameters] ReadingQuery query, HttpRequest request, IFilmDesk desk, Submission submission, Shelf<ReadFilm> shelf, ServiceOptions options, TimeProvider clock)
    {
        var (facts, wrong) = query.Facts();
        if ((wrong ?? ReadingFormats.Wrong(query.Format, query.Patient)) is { } sentence)
        {
            return Problem.BadRequest(sentence);
        }

        if (!submission.HasRoom)
        {
            return Submission.Busy(request.HttpContext.Response);
        }

        var content = await Body.ReadAsync(request, options.MaxRequestBytes).ConfigureAwait(false);
        if (content.Length == 0)
        {
            return Problem.BadRequest("The request has no body; send the film's file as it is.");
        }

        var name = query.Name is { Length: > 0 } given ? StudyEndpoints.FileName(given) : "film";
        var key = Submission.Key([content], query.Key);
        return await submission.AnswerAsync(
            request.HttpContext, key, $"/api/readings/{key}", shelf,
            [c => ReadFilm.Of(desk, content, name, [facts!], c)],
            films => films[0],
            film => ReadingFormats.Of(film, query.Format, query.Patient, clock)).ConfigureAwait(false);
    }

    private static IResult Get(string key, string? format, string? patient, Shelf<ReadFilm> shelf, TimeProvider clock) => ReadingFormats.Wrong(format, patient) is { } wrong
        ? Problem.BadRequest(wrong)
        : shelf.Find(key) is { } found ? ReadingFormats.Of(found, format, patient, clock) : Problem.NotFound("reading");

    private static async Task<IResult> Measure([AsParameters] ReadingQuery query, int width, int height, HttpRequest request, IFilmDesk desk)
    {
        var (facts, wrong) = query.Facts();
        if (facts is null || width is < 1 or > InputLimits.FilmSide || height is < 1 or > InputLimits.FilmSide)
        {
            return Problem.BadRequest(wrong ?? "width and height are those of the film, in pixels.");
        }

        var content = await Body.ReadAsync(request, InputLimits.LandmarkBytes).ConfigureAwait(false);
        try
        {
            var name = query.Name ?? "film";
            var laid = LandmarkFile.Read(content, name, width, height);
            return Results.Bytes(ReadingJson.Write(new ReadingAssembler(desk.Limits, RedrawOptions.Default).Assemble(new ReadingInput
            {
                Tool = desk.Tool,
                Image = new ImageFacts(name, width, height, facts.RowSpacingMm, facts.ColumnSpacingMm, facts.RowSpacingMm is null ? "none" : "option", ""),
                View = new ViewFinding(laid.View, new Dictionary<string, double>(StringComparer.Ordinal), null),
                Side = facts.Side ?? Anatomy.Side.Unknown,
                Patient = new Anatomy.Patient(facts.AgeMonths, facts.Sex),
                Context = facts.Context ?? Anatomy.FilmContext.Unknown,
                Landmarks = laid.Landmarks,
            })), "application/json");
        }
        catch (ExchangeFormatException e)
        {
            return Problem.BadRequest(e.Message);
        }
    }
}
