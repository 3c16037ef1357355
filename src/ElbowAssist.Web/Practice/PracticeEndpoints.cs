using System.Text.Json;
using ElbowAssist.Store;
using ElbowAssist.Web.Films;
using ElbowAssist.Web.Problems;
using ElbowAssist.Web.Studies;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace ElbowAssist.Web.Practice;

/// <summary>The practice room. Results stay on this machine and can be deleted.</summary>
internal static class PracticeEndpoints
{
    public static void Map(IEndpointRouteBuilder routes)
    {
        var practice = routes.MapGroup("/api/practice").WithTags("Practice room");
        practice.MapPost("", Make).WithSummary("Simulate a film to practise on").Produces<PracticeFilm>().ProducesProblem(400).ProducesProblem(429);
        practice.MapGet("/{film}/samples", Samples).WithSummary("Its samples, as those of a film").Produces(200, contentType: "application/octet-stream").ProducesProblem(404);
        practice.MapPost("/{film}/answer", (string film, PracticeAnswer answer, PracticeRoom room) =>
                room.Find(film) is { } found ? Results.Ok(room.Answer(found, answer)) : Problem.NotFound("practice film"))
            .WithSummary("Answer, and see the truth").Produces<PracticeTruth>().ProducesProblem(404);
        practice.MapPost("/hand", (KnownHand hand) => hand.Next() is { } film
                ? Results.Ok(film)
                : Problem.NotYet("no-own-lines", "There is no closed read with a line of your own yet; read a study first."))
            .WithSummary("One of your own earlier films, blinded, to lay its line again").Produces<HandFilm>().ProducesProblem(409);
        practice.MapGet("/hand/{film}/samples", HandSamples).WithSummary("Its samples").Produces(200, contentType: "application/octet-stream").ProducesProblem(404);
        practice.MapPost("/hand/{film}/answer", async (string film, HandLine line, KnownHand hand) =>
                line is { From: [var x0, var y0], To: [var x1, var y1] } && hand.Film(film) is not null
                    ? await hand.AnswerAsync(film, new(x0, y0), new(x1, y1)).ConfigureAwait(false) is { } result
                        ? Results.Ok(result)
                        : Problem.NotYet("not-comparable", "The tool lays no capitellum on this film, so two lines cannot be compared on it.")
                    : Problem.NotFound("film"))
            .WithSummary("Lay it again, and see how far it moved").Produces<HandResult>().ProducesProblem(404).ProducesProblem(409);
        practice.MapGet("/results", (StudyStore store) =>
                store.Practice().Select(r => new PracticeLineResult(r.At, r.Kind, JsonSerializer.Deserialize<JsonElement>(r.Result))))
            .WithSummary("Own results").Produces<IReadOnlyList<PracticeLineResult>>();
        practice.MapDelete("/results", (StudyStore store) =>
        {
            store.DeletePractice();
            return Results.NoContent();
        }).WithSummary("Delete all own results").Produces(204);
    }

    private static async Task<IResult> Make(PracticeWish wish, PracticeRoom room, Workers workers, HttpContext context)
    {
        if (wish is not { Patient: "adult" or "child", View: "lateral" or "ap", Level: >= 1 and <= 3 })
        {
            return Problem.BadRequest("patient is adult or child, view lateral or ap, level 1, 2 or 3.");
        }

        if (!workers.HasRoom)
        {
            context.Response.Headers.RetryAfter = "2";
            return Problem.Of(429, "too-many", "Too many at once", "As many films are being read as this machine can; try again in a moment.");
        }

        return Results.Ok(PracticeRoom.Page(await room.MakeAsync(wish, context.RequestAborted).ConfigureAwait(false)));
    }

    private static async Task<IResult> HandSamples(string film, KnownHand hand) => hand.Film(film) is { } found
        ? new SamplesResult(await found.Samples.ConfigureAwait(false), (await found.Opened.ConfigureAwait(false)).Radiograph)
        : Problem.NotFound("film");

    private static IResult Samples(string film, PracticeRoom room) =>
        room.Find(film) is { } found ? new SamplesResult(PracticeRoom.Samples(found), found.Radiograph) : Problem.NotFound("practice film");
}
