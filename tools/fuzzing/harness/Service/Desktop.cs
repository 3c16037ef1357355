using System.Text;
using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Rules;
using ElbowAssist.Geometry;
using ElbowAssist.Reading.Studies;
using ElbowAssist.Reading.Walks;
using ElbowAssist.Store;
using ElbowAssist.Store.Entries;
using ElbowAssist.Web.Films;
using ElbowAssist.Web.Practice;
using ElbowAssist.Web.Readings;
using ElbowAssist.Web.Studies;
using Microsoft.Extensions.DependencyInjection;

namespace ElbowAssist.Fuzzing.Service;

/// <summary>
/// What lies in the service when a request comes, always the same: a read under way with the tool's proposals on view, a
/// closed one, a practice film, and a reading and a study on their shelves.
/// </summary>
internal sealed class Desktop(IServiceProvider services, StudyStore store)
{
    private const string OwnLine = "anterior-humeral-line";

    private readonly OpenStudies open = services.GetRequiredService<OpenStudies>();
    private readonly KnownHand hand = services.GetRequiredService<KnownHand>();
    private readonly PracticeRoom room = services.GetRequiredService<PracticeRoom>();
    private string? stamp;
    private string closed = "";
    private string study = "";
    private string film = "";
    private string? practice;

    /// <summary>Lays out what a request before it has changed.</summary>
    public async Task LayAsync()
    {
        if (stamp == store.Stamp())
        {
            return;
        }

        foreach (var old in store.List().Where(o => o.Id != closed))
        {
            open.Delete(old.Id);
        }

        if (closed.Length == 0)
        {
            (closed, _) = Study(concluded: true);
            Shelve();
        }

        (study, film) = Study(concluded: false);
        await SettledAsync();
        stamp = store.Stamp();
    }

    /// <summary>Waits for the films that a request has brought in, and forgets what it left among the results.</summary>
    public async Task ClearAsync()
    {
        if (stamp != store.Stamp())
        {
            await SettledAsync();
        }

        store.DeletePractice();
    }

    /// <summary>What a parameter of a route stands for, or null where the input says it.</summary>
    public string? ValueOf(string pattern, string parameter) => (pattern, parameter) switch
    {
        (_, "study") => study,
        ("/api/practice/{film}/answer", _) => practice ??= room.MakeAsync(new PracticeWish("adult", "lateral", 1), default, seed: 1, size: 96).GetAwaiter().GetResult().Id,
        ("/api/practice/hand/{film}/answer", _) => hand.Next()!.Id,
        (_, "film") => film,
        _ => null,
    };

    private (string Study, string Film) Study(bool concluded)
    {
        var begun = store.Create("sample", "films");
        var added = store.AddFilm(begun.Id, "film", [concluded ? SampleDesk.ForDicom : (byte)1]).Id;
        var walk = new WalkKeeper(WalkDefinition.ChildWalk, TimeProvider.System).Begin(proposalsVisibleFromStart: true);
        store.Append(begun.Id, "", [
            new QuestionStated(100, Sex.Female, Side.Left, Maturity.Child),
            new WalkBegun(walk),
            new OwnLineLaid(added, OwnLine, new Point(38, 20), new Point(37, 60), ToolWasVisible: true),
            .. concluded ? [new WalkClosed(walk.StartedAt)] : Array.Empty<StudyEvent>(),
        ]);
        return (begun.Id, added);
    }

    private async Task SettledAsync()
    {
        foreach (var held in store.List().Select(s => open.Find(s.Id)).OfType<OpenStudy>())
        {
            foreach (var one in held.Films)
            {
                await ((Task)one.Proposal(View.Unknown)).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            }
        }
    }

    private void Shelve()
    {
        var desk = services.GetRequiredService<IFilmDesk>();
        var read = ReadFilm.Of(desk, [SampleDesk.ForDicom], "film", [], default);
        services.GetRequiredService<Shelf<ReadFilm>>().Put("key", read);
        services.GetRequiredService<Shelf<ReadStudy>>().Put("key", new ReadStudy(
            StudyAssembler.Assemble(new StudyInput { Tool = desk.Tool, Films = [new StudyFilm(read.Name, read.Reading, read.Sides)], InjuredSide = Side.Unknown }), [read]));
    }
}
