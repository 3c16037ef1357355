using ElbowAssist.Anatomy;
using ElbowAssist.Exchange.Json.Facts;
using ElbowAssist.Reading.Studies;
using ElbowAssist.Web.Films;
using ElbowAssist.Web.Problems;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace ElbowAssist.Web.Readings;

/// <summary>Studies for other programs: the films of one patient in, their readings put together out; nothing is kept on disk.</summary>
internal static class StudyReadingEndpoints
{
    public static void Map(IEndpointRouteBuilder routes)
    {
        var studies = routes.MapGroup("/api/study-readings").WithTags("Readings for programs");
        studies.MapPost("", Read).WithSummary("Read the films of one patient, a multipart body with a part for each; with \"Prefer: respond-async\" as a job")
            .WithDescription("A part named as a film with .info.json behind it is that film's sidecar. What the query says holds for every film. " +
                "format is json (the study), html or text (its report), fhir, or zip (all of it with every film's outputs). A film that cannot be read refuses the study: a missing view could be the one that matters.")
            .Accepts<byte[]>("multipart/form-data").Produces(200).Produces<ReadingJob>(202)
            .ProducesProblem(400).ProducesProblem(408).ProducesProblem(409).ProducesProblem(413).ProducesProblem(422).ProducesProblem(429).ProducesProblem(503);
        studies.MapGet("/{key}", Get).WithSummary("A study read before, in any format").Produces(200).ProducesProblem(400).ProducesProblem(404).ProducesProblem(409);
    }

    private static async Task<IResult> Read(
        [AsParameters] ReadingQuery query, HttpRequest request, IFilmDesk desk, Submission submission, Shelf<ReadStudy> shelf, ServiceOptions options, TimeProvider clock)
    {
        var (facts, wrong) = query.Facts();
        if ((wrong ?? StudyFormats.Wrong(query.Format, query.Patient)) is { } sentence)
        {
            return Problem.BadRequest(sentence);
        }

        if (!submission.HasRoom)
        {
            return Submission.Busy(request.HttpContext.Response);
        }

        var (sent, odd) = await StudyParts.ReadAsync(request, options.MaxRequestBytes).ConfigureAwait(false);
        if (odd is not null)
        {
            return Problem.BadRequest(odd);
        }

        var key = Submission.Key(sent.SelectMany(f => new[] { f.Content, f.Sidecar ?? [] }), $"{query.Key}|{string.Join('|', sent.Select(f => f.Name))}");
        return await submission.AnswerAsync(
            request.HttpContext, key, $"/api/study-readings/{key}", shelf,
            [.. sent.Select(f => (Func<CancellationToken, ReadFilm>)(c => ReadFilm.Of(desk, f.Content, f.Name, f.Sidecar is { } said ? [facts!, SidecarJson.Read(said)] : [facts!], c)))],
            films => new ReadStudy(StudyAssembler.Assemble(new StudyInput
            {
                Tool = desk.Tool,
                Films = [.. films.Select(f => new StudyFilm(f.Name, f.Reading, f.Sides))],
                InjuredSide = facts!.Side ?? Side.Unknown,
            }), films),
            study => StudyFormats.Of(study, query.Format, query.Patient, request.HttpContext.Response, clock)).ConfigureAwait(false);
    }

    private static IResult Get(string key, string? format, string? patient, Shelf<ReadStudy> shelf, HttpResponse response, TimeProvider clock) => StudyFormats.Wrong(format, patient) is { } wrong
        ? Problem.BadRequest(wrong)
        : shelf.Find(key) is { } found ? StudyFormats.Of(found, format, patient, response, clock) : Problem.NotFound("study");
}
