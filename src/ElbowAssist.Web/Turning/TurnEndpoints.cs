using ElbowAssist.Reading.Walks;
using ElbowAssist.Web.Films;
using ElbowAssist.Web.Problems;
using ElbowAssist.Web.Studies;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace ElbowAssist.Web.Turning;

/// <summary>Turning a simulated elbow like the one on the film: what does rotation alone do to the lines?</summary>
internal static class TurnEndpoints
{
    public static void Map(IEndpointRouteBuilder routes) =>
        routes.MapGet("/api/studies/{study}/films/{film}/turned", Turn).WithTags("Lines and landmarks")
            .WithSummary("A simulated elbow matched to the film, turned by up to twenty degrees, once the tool's lines are shown")
            .Produces<TurnedElbow>().ProducesProblem(404).ProducesProblem(409).ProducesProblem(429);

    private static async Task<IResult> Turn(string study, string film, OpenStudies open, IFilmDesk desk, Workers workers, HttpContext context)
    {
        if (open.Find(study) is not { } found || found.Film(film) is not { } opened)
        {
            return Problem.NotFound("film");
        }

        if (!Curtain.Shows(found.Status, WalkTopic.Alignment) || found.Reading(opened) is not { } reading)
        {
            return Problem.NotYet("walk.own-answer-first", "The elbow can be turned once the tool's lines are shown.");
        }

        if (!workers.HasRoom)
        {
            context.Response.Headers.RetryAfter = "2";
            return Problem.Of(429, "too-many", "Too many at once", "As many films are being read as this machine can; try again in a moment.");
        }

        var turned = await workers.RunAsync(c => MatchedElbow.To(reading, c) is { } match ? TurnedFrames.Of(match, desk.Tool, c) : null, context.RequestAborted).ConfigureAwait(false);
        return turned is null
            ? Problem.NotYet("too-few-landmarks", "Too few landmarks lie on this film to match a simulated elbow to it.")
            : Results.Ok(turned);
    }
}
