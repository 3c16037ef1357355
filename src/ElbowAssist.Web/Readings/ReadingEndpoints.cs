using System.Diagnostics;
using System.Security.Cryptography;
using System.Text;
using ElbowAssist.Exchange;
using ElbowAssist.Exchange.Dicom.Presentation;
using ElbowAssist.Exchange.Dicom.Reports;
using ElbowAssist.Drawing;
using ElbowAssist.Exchange.Json;
using ElbowAssist.Exchange.Json.Coco;
using ElbowAssist.Imaging.Files;
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
            .Accepts<byte[]>("application/octet-stream", "*/*").Produces(200).Produces<ReadingJob>(202).ProducesProblem(400).ProducesProblem(413).ProducesProblem(422).ProducesProblem(429).ProducesProblem(503);
        readings.MapGet("/{key}", Get).WithSummary("A reading made before, in any format").Produces(200).ProducesProblem(404);
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
            .Produces(200, contentType: "application/json").ProducesProblem(400);
    }

    private static async Task<IResult> Read(
        [AsParameters] ReadingQuery query, HttpRequest request, IFilmDesk desk, Workers workers, ReadingShelf shelf, ReadingJobs jobs, ServiceOptions options, TimeProvider clock)
    {
        var (facts, wrong) = query.Facts();
        if (facts is null)
        {
            return Problem.BadRequest(wrong!);
        }

        if (ReadingFormats.Unknown(query.Format) is { } unknown)
        {
            return Problem.BadRequest(unknown);
        }

        // Turned away before the body is taken in: what cannot be served takes no memory.
        if (!workers.HasRoom)
        {
            return Busy(request.HttpContext.Response);
        }

        var content = await Body.ReadAsync(request, options.MaxRequestBytes).ConfigureAwait(false);
        if (content.Length == 0)
        {
            return Problem.BadRequest("The request has no body; send the film's file as it is.");
        }

        var key = Convert.ToHexStringLower(SHA256.HashData([.. SHA256.HashData(content), .. Encoding.UTF8.GetBytes(query.Key)]))[..32];
        var address = $"/api/readings/{key}";
        if (request.Headers["Prefer"].ToString().Contains("respond-async", StringComparison.OrdinalIgnoreCase))
        {
            var job = jobs.Begin(async (reading, cancellation) =>
            {
                if (shelf.Find(key) is null)
                {
                    shelf.Put(await workers.RunAsync(
                        c =>
                        {
                            reading();
                            return Make(key, content, query, facts, desk, c);
                        },
                        cancellation).ConfigureAwait(false));
                }

                return address;
            });
            return Results.Accepted($"/api/readings/jobs/{job.Id}", job);
        }

        if (shelf.Find(key) is not { } found)
        {
            if (!workers.HasRoom)
            {
                return Busy(request.HttpContext.Response);
            }

            using var limit = new CancellationTokenSource(options.Patience, clock);
            using var either = CancellationTokenSource.CreateLinkedTokenSource(limit.Token, request.HttpContext.RequestAborted);
            try
            {
                found = await workers.RunAsync(c => Make(key, content, query, facts, desk, c), either.Token).ConfigureAwait(false);
                shelf.Put(found);
            }
            catch (OperationCanceledException) when (limit.IsCancellationRequested)
            {
                request.HttpContext.Response.Headers.RetryAfter = "10";
                return Problem.Of(503, "too-slow", "Took too long", "The reading took longer than a request may; ask for it as a job, or try again later.");
            }
            catch (Exception e) when (e is UnreadableFilmException or ExchangeFormatException)
            {
                return Problem.Unreadable(e.Message);
            }
        }

        request.HttpContext.Response.Headers.ContentLocation = address;
        return ReadingFormats.Of(found, query.Format, clock);
    }

    private static IResult Get(string key, string? format, ReadingShelf shelf, TimeProvider clock) => ReadingFormats.Unknown(format) is { } unknown
        ? Problem.BadRequest(unknown)
        : shelf.Find(key) is { } found ? ReadingFormats.Of(found, format, clock) : Problem.NotFound("reading");

    private static async Task<IResult> Measure([AsParameters] ReadingQuery query, int width, int height, HttpRequest request, IFilmDesk desk)
    {
        var (facts, wrong) = query.Facts();
        if (facts is null || width is < 1 or > 65_535 || height is < 1 or > 65_535)
        {
            return Problem.BadRequest(wrong ?? "width and height are those of the film, in pixels.");
        }

        const long Limit = 1L << 20;
        var content = await Body.ReadAsync(request, Limit).ConfigureAwait(false);
        try
        {
            var name = query.Name ?? "film";
            var laid = LandmarkFile.Read(content, name, width, height);
            return Results.Bytes(ReadingJson.Write(ReadingAssembler.Default.Assemble(new ReadingInput
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

    private static ShelvedReading Make(string key, byte[] content, ReadingQuery query, Exchange.Json.Facts.FilmFacts facts, IFilmDesk desk, CancellationToken cancellation)
    {
        using var activity = Telemetry.Source.StartActivity("read film");
        var started = Stopwatch.GetTimestamp();
        var film = desk.Open(content, query.Name is { Length: > 0 and <= 120 } name ? name : "film", [facts]);
        var reading = ReadingAssembler.Default.Assemble(desk.Propose(film, null, cancellation));
        reading = reading with { Reasons = [.. reading.Reasons, .. film.Facts.Conflicts] };
        Telemetry.FilmsRead.Add(1);
        Telemetry.ReadSeconds.Record(Stopwatch.GetElapsedTime(started).TotalSeconds);
        return new(key, reading, ReportEndpoints.Picture(film.Radiograph), film.Dicom);
    }

    private static IResult Busy(HttpResponse response)
    {
        Telemetry.TurnedAway.Add(1);
        response.Headers.RetryAfter = "2";
        return Problem.Of(429, "too-many", "Too many at once", "As many films are being read as this machine can; try again in a moment.");
    }
}
