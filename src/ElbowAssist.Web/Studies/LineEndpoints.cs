using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Geometry;
using ElbowAssist.Imaging;
using ElbowAssist.Imaging.Normalisation;
using ElbowAssist.Phantom.Output;
using ElbowAssist.Reading;
using ElbowAssist.Reading.Walks;
using ElbowAssist.Store.Entries;
using ElbowAssist.Web.Problems;
using ElbowAssist.Web.Studies.Pages;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace ElbowAssist.Web.Studies;

/// <summary>Lines and landmarks by hand, and enhanced crops.</summary>
internal static class LineEndpoints
{
    public static void Map(IEndpointRouteBuilder routes)
    {
        var film = routes.MapGroup("/api/studies/{study}/films/{film}").WithTags("Lines and landmarks");
        film.MapPost("/lines", Lay).WithSummary("Lay a line by hand").Produces<StudyPage>().ProducesProblem(400).ProducesProblem(404);
        film.MapPost("/lines/{name}/compare", Compare).WithSummary("Show the tool's line of a name beside the reader's own").Produces<StudyPage>().ProducesProblem(404).ProducesProblem(409);
        film.MapPost("/landmarks/{name}/try", TryPlace).WithSummary("Where the lines would lie with a landmark elsewhere; nothing is kept").Produces<TriedPage>().ProducesProblem(400).ProducesProblem(404).ProducesProblem(409);
        film.MapPut("/landmarks/{name}", Put).WithSummary("Move or place a landmark").Produces<StudyPage>().ProducesProblem(400).ProducesProblem(404).ProducesProblem(409);
        film.MapDelete("/landmarks/{name}", GiveBack).WithSummary("Take a landmark back to where the tool proposed it").Produces<StudyPage>().ProducesProblem(404).ProducesProblem(409);
        film.MapPost("/enhanced/{item}", Enhanced).WithSummary("A crop with its contrast raised locally, once the question has the reader's own answer")
            .Produces(StatusCodes.Status200OK, contentType: "image/png").ProducesProblem(404).ProducesProblem(409);
    }

    private static IResult Lay(string study, string film, HandLine line, HttpRequest request, OpenStudies open)
    {
        if (open.Find(study)?.Film(film) is null)
        {
            return Problem.NotFound("film");
        }

        if (line.Name is null || !Curtain.Lines.ContainsKey(line.Name) || line.From is not [var x0, var y0] || line.To is not [var x1, var y1] ||
            new Point(x0, y0) is var from && new Point(x1, y1) is var to && !(InputLimits.Holds(from) && InputLimits.Holds(to) && from.DistanceTo(to) >= 2))
        {
            return Problem.BadRequest("A line has one of the names anterior-humeral-line and radiocapitellar-line and two points at least two pixels apart.");
        }

        return WalkEndpoints.Change(study, request, open, (_, status) =>
            ([new OwnLineLaid(film, line.Name, from, to, Curtain.Shows(status, WalkTopic.Alignment) || status.Compared.Contains((film, line.Name)))], null));
    }

    private static IResult Compare(string study, string film, string name, HttpRequest request, OpenStudies open)
    {
        if (open.Find(study)?.Film(film) is not { } found || !Curtain.Lines.TryGetValue(name, out var prefix))
        {
            return Problem.NotFound("film or line");
        }

        return WalkEndpoints.Change(study, request, open, (study, status) =>
        {
            if (status.Walk is null)
            {
                return ([], WalkEndpoints.NotBegun);
            }

            if (!status.OwnLines.ContainsKey((film, name)))
            {
                return ([], new Reason("walk.own-line-first", "Lay your own line before the tool's is shown."));
            }

            if (study.Reading(found) is null)
            {
                return ([], new Reason("films.being-read", "The film is still being read; try again in a moment."));
            }

            return status.Compared.Contains((film, name)) || Curtain.Shows(status, WalkTopic.Alignment)
                ? ([], null)
                : ([new LineCompared(film, name, [.. WalkEndpoints.Values(study, prefix).Where(v => v.FilmId == film)])], null);
        });
    }

    private static IResult TryPlace(string study, string film, string name, Place place, OpenStudies open)
    {
        if (Find(study, film, name, open) is not { } found)
        {
            return Problem.NotFound("film or landmark");
        }

        if (!Curtain.Shows(found.Study.Status, WalkTopic.Alignment))
        {
            return Problem.NotYet("walk.own-answer-first", "Landmarks can be moved once the tool's lines are shown.");
        }

        if (!InputLimits.Holds(new Point(place.X, place.Y)))
        {
            return NoPlace();
        }

        return found.Study.Try(found.Film, name, new Point(place.X, place.Y)) is { } reading
            ? Results.Ok(FilmPages.Tried(reading))
            : Problem.NotYet("films.being-read", "The film is still being read; try again in a moment.");
    }

    private static IResult Put(string study, string film, string name, Place place, HttpRequest request, OpenStudies open, TimeProvider clock)
    {
        if (Find(study, film, name, open) is null)
        {
            return Problem.NotFound("film or landmark");
        }

        if (!InputLimits.Holds(new Point(place.X, place.Y)))
        {
            return NoPlace();
        }

        return WalkEndpoints.Change(study, request, open, (study, status) =>
        {
            if (status.Walk is not { } walk)
            {
                return ([], WalkEndpoints.NotBegun);
            }

            if (!Curtain.Shows(status, WalkTopic.Alignment))
            {
                return ([], new Reason("walk.own-answer-first", "Landmarks can be moved once the tool's lines are shown."));
            }

            var before = study.Film(film) is { } f ? study.Reading(f)?.Landmarks.FirstOrDefault(l => l.Name == name)?.Position : null;
            var outcome = WalkEndpoints.Keeper(walk, clock).Move(walk, film, name, before, new Point(place.X, place.Y));
            return outcome.Refusal is { } refusal ? ([], refusal) : ([new LandmarkLaid(outcome.Record.Moved[^1])], null);
        });
    }

    private static IResult NoPlace() => Problem.BadRequest("A landmark needs a place on the film, in pixels.");

    private static IResult GiveBack(string study, string film, string name, HttpRequest request, OpenStudies open) => Find(study, film, name, open) is null
        ? Problem.NotFound("film or landmark")
        : WalkEndpoints.Change(study, request, open, (_, status) => status.Walk?.ConcludedAt is not null
            ? ([], new Reason("walk.closed", "The read is closed; begin another to add to it."))
            : status.Placements.ContainsKey((film, name)) ? ([new LandmarkGivenBack(film, name)], null) : ([], null));

    private static IResult Enhanced(string study, string film, string item, HttpRequest request, OpenStudies open, TimeProvider clock)
    {
        if (open.Find(study) is not { } found || found.Film(film) is not { } opened || !opened.Opened.IsCompletedSuccessfully)
        {
            return Problem.NotFound("film");
        }

        CropPage? crop = null;
        var refusal = found.Change("", status =>
        {
            if (status.Walk is not { } walk)
            {
                return ([], WalkEndpoints.NotBegun);
            }

            var keeper = WalkEndpoints.Keeper(walk, clock);
            var places = keeper.Definition.Find(item)?.Crops.Select(c => StudyPages.Crop(found, opened, c)).OfType<CropPage>().ToList() ?? [];
            if (places.Count == 0)
            {
                return ([], new Reason("walk.no-crop", "There is no place on this film for that question."));
            }

            crop = places[0];
            if (walk.Enhanced.Exists(e => e.ItemId == item))
            {
                return ([], null);
            }

            var outcome = keeper.ShowEnhanced(walk, item);
            return outcome.Refusal is { } r ? ([], r) : ([new EnhancedOpened(outcome.Record.Enhanced[^1])], null);
        });
        return refusal is not null ? Problem.NotYet(refusal.Code, refusal.Text) : Results.Bytes(Png(opened.Opened.Result.Radiograph, crop!), "image/png");
    }

    private static byte[] Png(Radiograph film, CropPage crop)
    {
        var shown = DisplayImage.Of(NormalisedFilm.Of(film), localContrast: true);
        var scale = shown.Width / (double)film.Width;
        var side = Math.Max(8, (int)(crop.Side * scale));
        var (left, top) = ((int)((crop.X * scale) - (side / 2)), (int)((crop.Y * scale) - (side / 2)));
        var pixels = new ushort[side * side];
        for (var y = Math.Max(0, -top); y < side && y + top < shown.Height; y++)
        {
            for (var x = Math.Max(0, -left); x < side && x + left < shown.Width; x++)
            {
                pixels[(y * side) + x] = (ushort)(257 * shown.Pixels.Span[((y + top) * shown.Width) + x + left]);
            }
        }

        using var png = new MemoryStream();
        GreyPng.Write(png, pixels, side, side);
        return png.ToArray();
    }

    private static (OpenStudy Study, OpenFilm Film)? Find(string study, string film, string name, OpenStudies open) =>
        open.Find(study) is { } found && found.Film(film) is { } opened && found.Reading(opened) is { } reading && LandmarkSet.Of(reading.View.Name)?.IndexOf(name) >= 0
            ? (found, opened)
            : null;
}
