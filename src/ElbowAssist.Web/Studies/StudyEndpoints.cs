using System.Text;
using ElbowAssist.Exchange;
using ElbowAssist.Exchange.Json.Facts;
using ElbowAssist.Store;
using ElbowAssist.Web.Problems;
using ElbowAssist.Web.Studies.Pages;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace ElbowAssist.Web.Studies;

/// <summary>Studies: begun, listed, given films, deleted.</summary>
internal static class StudyEndpoints
{
    private const int LongestName = 120;

    public static void Map(IEndpointRouteBuilder routes)
    {
        var studies = routes.MapGroup("/api/studies").WithTags("Studies");
        studies.MapGet("", List).WithSummary("All studies, the newest first; 304 where nothing has changed since the list of the tag in If-None-Match").Produces<IReadOnlyList<StudyLine>>().Produces(StatusCodes.Status304NotModified);
        studies.MapPost("", Begin).WithSummary("Begin a study, empty or from a bundled demo").Produces<StudyPage>(StatusCodes.Status201Created).ProducesProblem(404);
        studies.MapGet("/{study}", Get).WithSummary("A study, without what the reader may not see yet").Produces<StudyPage>().ProducesProblem(404);
        studies.MapDelete("/{study}", Delete).WithSummary("Delete a study with its films and everything that happened to it").Produces(StatusCodes.Status204NoContent).ProducesProblem(404);
        studies.MapPost("/{study}/films", AddFilm).WithSummary("Add a film, the file as the body; the same file is not added twice")
            .Accepts<byte[]>("application/octet-stream", "*/*").Produces<StudyPage>().ProducesProblem(404).ProducesProblem(413);
        studies.MapGet("/{study}/films/{film}/samples", Samples).WithSummary("16-bit little-endian grey samples for a screen, size and window in the headers")
            .Produces(StatusCodes.Status200OK, contentType: "application/octet-stream").ProducesProblem(404).ProducesProblem(422);
        routes.MapGet("/api/demos", (DemoStudies demos) => demos.List()).WithTags("Studies").WithSummary("Bundled demo studies").Produces<IReadOnlyList<DemoLine>>();
        routes.MapGet("/api/follow-up", (StudyStore store) => store.List().Select(s => Line(s, store)).Where(s => s.FollowUp is not null))
            .WithTags("Studies").WithSummary("Studies on the follow-up list").Produces<IReadOnlyList<StudyLine>>();
    }

    private static IResult List(StudyStore store, HttpContext context)
    {
        var tag = $"\"{store.Stamp()}\"";
        context.Response.Headers.ETag = tag;
        return context.Request.Headers.IfNoneMatch == tag ? Results.StatusCode(StatusCodes.Status304NotModified) : Results.Ok(store.List().Select(s => Line(s, store)));
    }

    private static StudyLine Line(StoredStudy study, StudyStore store)
    {
        var status = StudyStatus.Of(store.Entries(study.Id));
        return new(study.Id, study.Title, study.Origin, study.CreatedAt, study.Films.Count, status.Walk?.ConcludedAt is not null, status.FollowUp, status.Outcome);
    }

    private static IResult Begin(NewStudy? wanted, StudyStore store, OpenStudies open, DemoStudies demos)
    {
        if (wanted?.Demo is { } demo)
        {
            return demos.Begin(demo, store) is { } begun
                ? Results.Created($"/api/studies/{begun.Id}", StudyPages.Of(open.Find(begun.Id)!))
                : Problem.NotFound("demo study");
        }

        var title = Short(wanted?.Title) is { Length: > 0 } given ? given : "Untitled study";
        var study = store.Create(title, "films");
        return Results.Created($"/api/studies/{study.Id}", StudyPages.Of(open.Find(study.Id)!));
    }

    private static IResult Get(string study, OpenStudies open) => open.Find(study) is { } found ? Results.Ok(StudyPages.Of(found)) : Problem.NotFound("study");

    private static IResult Delete(string study, OpenStudies open) => open.Delete(study) ? Results.NoContent() : Problem.NotFound("study");

    private static async Task<IResult> AddFilm(string study, string name, string? stated, HttpRequest request, OpenStudies open, ServiceOptions options)
    {
        if (open.Find(study) is not { } found)
        {
            return Problem.NotFound("study");
        }

        if (stated is not null && StatedOrNull(stated) is null)
        {
            return Problem.BadRequest("What is stated of the film cannot be used: it must be a sidecar as JSON.");
        }

        var content = await Body.ReadAsync(request, options.MaxRequestBytes).ConfigureAwait(false);
        if (content.Length == 0)
        {
            return Problem.BadRequest("The request has no body; send the film's file as it is.");
        }

        found.Add(FileName(name), content, stated, null);
        return Results.Ok(StudyPages.Of(found));
    }

    private static async Task<IResult> Samples(string study, string film, OpenStudies open, HttpResponse response)
    {
        if (open.Find(study)?.Film(film) is not { } found)
        {
            return Problem.NotFound("film");
        }

        try
        {
            var samples = await found.Samples.ConfigureAwait(false);
            return new SamplesResult(samples, (await found.Opened.ConfigureAwait(false)).Radiograph);
        }
        catch (Exception e) when (e is Imaging.Files.UnreadableFilmException or ExchangeFormatException)
        {
            return Problem.Unreadable(e.Message);
        }
    }

    /// <summary>What is stated of a film if it is a sidecar, else null.</summary>
    internal static string? StatedOrNull(string? stated)
    {
        try
        {
            return stated is not null && SidecarJson.Read(Encoding.UTF8.GetBytes(stated)) is not null ? stated : null;
        }
        catch (ExchangeFormatException)
        {
            return null;
        }
    }

    /// <summary>The last part of a name, without what could be a path or a command to a screen.</summary>
    internal static string FileName(string name)
    {
        var last = name.Split('/', '\\')[^1];
        var plain = Short(string.Concat(last.Where(c => !char.IsControl(c))));
        return plain is "" or "." or ".." ? "film" : plain;
    }

    internal static string Short(string? text)
    {
        var trimmed = (text ?? "").Trim();
        return trimmed.Length <= LongestName ? trimmed : trimmed[..LongestName];
    }
}
