using ElbowAssist.Exchange.Dicom.Web;
using ElbowAssist.Store;
using ElbowAssist.Web.Problems;
using ElbowAssist.Web.Studies;
using ElbowAssist.Web.Studies.Pages;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace ElbowAssist.Web.Archive;

/// <summary>
/// Films out of an archive over DICOMweb: found by day or accession number, or by a link that names their DICOM study.
/// The page fetches them one by one, so that each has its own outcome and the rest can be left out.
/// </summary>
internal static class ArchiveEndpoints
{
    private const int MostDays = 31;

    public static void Map(IEndpointRouteBuilder routes)
    {
        var archive = routes.MapGroup("/api/archive").WithTags("Archive");
        archive.MapGet("", (ArchiveDoor door) => new ArchivePage(door.IsOpen)).WithSummary("Whether an archive was named when the service was started").Produces<ArchivePage>();
        archive.MapGet("/studies", Find).WithSummary("Studies with elbow films, by day and accession number; without either, those of today")
            .Produces<IReadOnlyList<StudyReference>>().ProducesProblem(400).ProducesProblem(404).ProducesProblem(502);
        archive.MapPost("/studies/{uid}", Open).WithSummary("Open the DICOM study a link names: what has arrived of it, and what the archive holds besides")
            .Produces<ArchivedStudy>().ProducesProblem(400).ProducesProblem(404).ProducesProblem(502);
        routes.MapPost("/api/studies/{study}/films/archived", Fetch).WithTags("Archive").WithSummary("Fetch a film from the archive into a study")
            .Produces<StudyPage>().ProducesProblem(400).ProducesProblem(404).ProducesProblem(502);
    }

    private static async Task<IResult> Find(ArchiveDoor door, TimeProvider clock, DateOnly? from, DateOnly? to, string? accession, CancellationToken cancellation)
    {
        var today = DateOnly.FromDateTime(clock.GetLocalNow().Date);
        var (first, last) = (from ?? to ?? today, to ?? from ?? today);
        if (first > last || last.DayNumber - first.DayNumber > MostDays || accession is { Length: > 64 })
        {
            return Problem.BadRequest("from comes before to, a month apart at most; an accession number has 64 characters at most.");
        }

        var query = accession is { Length: > 0 } number ? new FilmQuery { AccessionNumber = number } : new FilmQuery { From = first, To = last };
        return await door.AskAsync(async client => Results.Ok(await client.FindStudiesAsync(query, cancellation).ConfigureAwait(false))).ConfigureAwait(false);
    }

    private static async Task<IResult> Open(string uid, ArchiveDoor door, StudyStore store, OpenStudies open, CancellationToken cancellation)
    {
        if (!ArchiveDoor.IsUid(uid))
        {
            return Problem.BadRequest("The link names no DICOM study; it ends with a study instance UID.");
        }

        var source = StudySource.Dicom(uid);
        if (!door.IsOpen)
        {
            return store.FindBySource(source) is { } arrived
                ? Results.Ok(new ArchivedStudy(arrived.Id, []))
                : Problem.Of(404, "not-arrived", "Not here", "No film of this study has arrived, and no archive was named with --archive when the service was started.");
        }

        return await door.AskAsync(async client =>
        {
            var films = await client.FindFilmsAsync(new FilmQuery { StudyInstanceUid = uid }, cancellation).ConfigureAwait(false);
            if (films.Count == 0 && store.FindBySource(source) is null)
            {
                return Problem.Of(404, "no-films", "No films", "The archive holds no elbow film of this study.");
            }

            var study = store.FindOrCreate(source, "From the archive", "archive");
            var held = await open.Find(study.Id)!.InstancesAsync().ConfigureAwait(false);
            return Results.Ok(new ArchivedStudy(study.Id, [.. films.Where(f => !held.Contains(f.SopInstanceUid)).Select(f => new ArchivedFilm(f.StudyInstanceUid, f.SeriesInstanceUid, f.SopInstanceUid))]));
        }).ConfigureAwait(false);
    }

    private static async Task<IResult> Fetch(string study, ArchivedFilm film, ArchiveDoor door, OpenStudies open, CancellationToken cancellation)
    {
        if (open.Find(study) is not { } found)
        {
            return Problem.NotFound("study");
        }

        if (!ArchiveDoor.IsUid(film.Study) || !ArchiveDoor.IsUid(film.Series) || !ArchiveDoor.IsUid(film.Instance))
        {
            return Problem.BadRequest("A film of the archive is named by the UIDs of its study, series and instance.");
        }

        if (found.Stored.Source != StudySource.Dicom(film.Study!))
        {
            return Problem.BadRequest("The film belongs to another study; films of two patients are not mixed.");
        }

        return await door.AskAsync(async client =>
        {
            var content = await client.FetchAsync(new FilmReference(film.Study!, film.Series!, "", film.Instance!, null), cancellation).ConfigureAwait(false);
            found.Add(FormattableString.Invariant($"archive film {found.Stored.Films.Count + 1}"), content, null, null);
            return Results.Ok(StudyPages.Of(found));
        }).ConfigureAwait(false);
    }
}
