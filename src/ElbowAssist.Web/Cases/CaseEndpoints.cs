using ElbowAssist.Geometry;
using ElbowAssist.Reading;
using ElbowAssist.Store;
using ElbowAssist.Store.Entries;
using ElbowAssist.Web.Problems;
using ElbowAssist.Web.Studies;
using ElbowAssist.Web.Studies.Pages;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace ElbowAssist.Web.Cases;

/// <summary>A class without a network: a teacher's read becomes a file, learners' lines come back as files and lie over it.</summary>
internal static class CaseEndpoints
{
    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/api/studies/{study}/case.json", Case).WithTags("Class").WithSummary("The films and the reader's lines as a case file, once the read is closed")
            .Produces<CaseFile>().ProducesProblem(404).ProducesProblem(409);
        routes.MapPost("/api/cases", Open).WithTags("Class").WithSummary("Begin a study from a case file; the teacher's lines show once one's own are laid")
            .Produces<StudyPage>(StatusCodes.Status201Created).ProducesProblem(400);
        routes.MapGet("/api/studies/{study}/lines.json", Lines).WithTags("Class").WithSummary("The reader's lines as a file, without a name")
            .Produces<LinesFile>().ProducesProblem(404);
        routes.MapPost("/api/studies/{study}/lines.json", Bring).WithTags("Class").WithSummary("Lay lines of a class over one's own")
            .Produces<StudyPage>().ProducesProblem(400).ProducesProblem(404);
    }

    private static IResult Case(string study, OpenStudies open, StudyStore store)
    {
        if (open.Find(study) is not { } found)
        {
            return Problem.NotFound("study");
        }

        if (!Curtain.ReportMayBeMade(found.Status))
        {
            return Problem.NotYet("walk.not-closed", "Close the read before it becomes a case file.");
        }

        return Results.Ok(new CaseFile(
            CaseFile.SchemaId,
            found.Stored.Title,
            [.. found.Stored.Films.Select(f => new CaseFilm(f.Name, store.Content(study, f.Id) ?? [], f.Stated))],
            Own(found)));
    }

    private static IResult Lines(string study, OpenStudies open) =>
        open.Find(study) is { } found ? Results.Ok(new LinesFile(LinesFile.SchemaId, Own(found))) : Problem.NotFound("study");

    private static IResult Open(CaseFile file, OpenStudies open, StudyStore store)
    {
        if (file is not { Schema: CaseFile.SchemaId, Films.Count: > 0 and <= InputLimits.CaseFilms, Lines: not null } || file.Films.Any(f => f?.Content is not { Length: > 0 }))
        {
            return Problem.BadRequest($"A case file has the schema {CaseFile.SchemaId}, one to twenty films and the teacher's lines.");
        }

        var study = store.Create(StudyEndpoints.Short(file.Title), "case");
        foreach (var film in file.Films)
        {
            store.AddFilm(study.Id, StudyEndpoints.FileName(film.Name ?? ""), film.Content, StudyEndpoints.StatedOrNull(film.Stated));
        }

        var found = open.Find(study.Id)!;
        _ = found.Change("", _ => (Brought(found, file.Lines, byTeacher: true), null));
        return Results.Created($"/api/studies/{study.Id}", StudyPages.Of(found));
    }

    private static IResult Bring(string study, LinesFile file, HttpRequest request, OpenStudies open)
    {
        if (file is not { Schema: LinesFile.SchemaId, Lines: not null })
        {
            return Problem.BadRequest($"A file of lines has the schema {LinesFile.SchemaId}.");
        }

        return WalkEndpoints.Change(study, request, open, (found, _) => Brought(found, file.Lines, byTeacher: false) is { Count: > 0 } lines
            ? (lines, null)
            : ([], new Reason("lines.of-other-films", "None of these lines was laid on a film of this study.")));
    }

    private static List<CaseLine> Own(OpenStudy study) =>
    [
        .. study.Status.OwnLines.Values.Select(l => new CaseLine(
            study.Stored.Films.First(f => f.Id == l.FilmId).Sha256, l.Name, [l.From.X, l.From.Y], [l.To.X, l.To.Y])),
    ];

    // A line that is none, or of another film, is left out.
    private static List<StudyEvent> Brought(OpenStudy study, IReadOnlyList<CaseLine> lines, bool byTeacher) =>
    [
        .. from line in lines.Take(InputLimits.CaseLines)
           where line is { From: [_, _], To: [_, _], Name: not null } && Curtain.Lines.ContainsKey(line.Name)
           let film = study.Stored.Films.FirstOrDefault(f => f.Sha256 == line.Sha256)
           let @from = new Point(line.From[0], line.From[1])
           let to = new Point(line.To[0], line.To[1])
           where film is not null && InputLimits.Holds(@from) && InputLimits.Holds(to) && @from.DistanceTo(to) >= 2
           select new LineBrought(film.Id, line.Name, @from, to, byTeacher),
    ];
}
