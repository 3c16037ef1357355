using System.Text;
using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Rules;
using ElbowAssist.Geometry;
using ElbowAssist.Reading;
using ElbowAssist.Reading.Walks;
using ElbowAssist.Store.Entries;
using ElbowAssist.Testing;
using Microsoft.Data.Sqlite;

namespace ElbowAssist.Store.Tests;

public sealed class StudyStoreTests : IDisposable
{
    private static readonly DateTimeOffset Noon = new(2026, 3, 4, 12, 0, 0, TimeSpan.Zero);

    private readonly TemporaryFolder folder = new();

    private string Path => folder.File("studies.db");

    public void Dispose() => folder.Dispose();

    [Fact]
    public void EveryKindOfEvent_ComesBackAsItWas()
    {
        StudyEvent[] all =
        [
            new QuestionStated(74, Sex.Male, Side.Left, Maturity.Unknown),
            new FilmStated("film-1", Side.Right, View.Ap, FilmContext.AfterReduction, true),
            new WalkBegun(new WalkRecord { Version = WalkVersion.Child, StartedAt = Noon, ProposalsVisibleFromStart = false }),
            new Answered(new WalkAnswer("effusion.call", ["yes"], "a note", Noon, true)),
            new ProposalsShown(new ToolShown(WalkTopic.Alignment, [new("film-1", "flexion-angle", 88.25, MeasurementState.Measured), new("film-1", "ulnar-bow", null, MeasurementState.Withheld)], Noon)),
            new EnhancedOpened(new EnhancedShown("cortex.radial-head", Noon)),
            new PromptDealtWith(new PromptSettled("code", "done", Noon)),
            new LandmarkLaid(new LandmarkMove("film-1", "ulna.coronoid", new Point(1.5, 2.25), new Point(3, 4), Noon)),
            new LandmarkGivenBack("film-1", "ulna.coronoid"),
            new OwnLineLaid("film-1", "anterior-humeral-line", new Point(1, 2), new Point(3, 40.5), false),
            new LineCompared("film-1", "anterior-humeral-line", [new("film-1", "anterior-humeral-line.position", 0.5, MeasurementState.EitherSide)]),
            new LineBrought("film-1", "anterior-humeral-line", new Point(1, 2), new Point(3, 40.5), true),
            new WalkClosed(Noon),
            new FollowUpAsked("effusion, no break traced"),
            new OutcomeEntered("radial head fracture on the second film"),
        ];
        Assert.Equal(typeof(StudyEvent).Assembly.GetTypes().Count(t => t.BaseType == typeof(StudyEvent)), all.Length);

        string journal;
        using (var store = StudyStore.Open(Path))
        {
            var study = store.Create("title", "films");
            store.Append(study.Id, "reader", all);
            journal = store.Journal(study.Id);
        }

        using var again = StudyStore.Open(Path);
        var id = Assert.Single(again.List()).Id;
        var entries = again.Entries(id);
        Assert.Equal(all.Select(e => e.GetType()), entries.Select(e => e.Event.GetType()));
        // Written a second time, what was read gives the same text: nothing was lost on the way.
        var copy = again.Create("copy", "films");
        again.Append(copy.Id, "reader", [.. entries.Select(e => e.Event)]);
        static string[] Events(string text) => [.. text.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(l => l[l.IndexOf("\"event\"", StringComparison.Ordinal)..])];
        Assert.Equal(Events(journal), Events(again.Journal(copy.Id)));
        Assert.All(entries, e => Assert.Equal("reader", e.Who));
    }

    [Fact]
    public void Status_FollowsFromEntries_AndAnswersAreAdded()
    {
        using var store = StudyStore.Open(Path);
        var study = store.Create("title", "films");
        store.Append(study.Id, "",
            new WalkBegun(new WalkRecord { Version = WalkVersion.Adult, StartedAt = Noon, ProposalsVisibleFromStart = false }),
            new Answered(new WalkAnswer("effusion.call", ["no"], null, Noon, false)),
            new Answered(new WalkAnswer("effusion.call", ["yes"], null, Noon, true)),
            new LandmarkLaid(new LandmarkMove("f", "ulna.coronoid", null, new Point(3, 4), Noon)),
            new LandmarkLaid(new LandmarkMove("f", "ulna.olecranon", null, new Point(5, 6), Noon)),
            new LandmarkGivenBack("f", "ulna.olecranon"),
            new FilmStated("f", Side.Left, null, null, null),
            new FilmStated("f", null, View.Ap, null, null));

        var status = StudyStatus.Of(store.Entries(study.Id));

        Assert.Equal("no", Assert.Single(status.Walk!.FirstAnswer("effusion.call")!.Choices));
        Assert.Equal("yes", Assert.Single(status.Walk.StandingAnswer("effusion.call")!.Choices));
        Assert.Equal(new Point(3, 4), Assert.Single(status.Placements).Value);
        Assert.Equal(2, status.Walk.Moved.Count);
        Assert.Equal(new FilmStated("f", Side.Left, View.Ap, null, null), status.Films["f"]);
        Assert.Equal(8, status.LastNumber);
    }

    [Fact]
    public void AnEntry_CannotBeChanged()
    {
        using (var store = StudyStore.Open(Path))
        {
            store.Append(store.Create("title", "films").Id, "", new FollowUpAsked("note"));
        }

        using var connection = new SqliteConnection($"Data Source={Path};Pooling=False");
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = "UPDATE entries SET event = '{}'";
        Assert.Contains("never changed", Assert.Throws<SqliteException>(() => command.ExecuteNonQuery()).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void TheSameFilm_IsNotAddedTwice()
    {
        using var store = StudyStore.Open(Path);
        var study = store.Create("title", "films");
        var first = store.AddFilm(study.Id, "a.png", [1, 2, 3]);
        Assert.Equal(first, store.AddFilm(study.Id, "b.png", [1, 2, 3]));
        Assert.NotEqual(first.Id, store.AddFilm(study.Id, "a.png", [1, 2, 4]).Id);
        Assert.Equal([1, 2, 3], store.Content(study.Id, first.Id));
    }

    [Fact]
    public void ADeletedStudy_LeavesNothingInTheFile()
    {
        var secret = Encoding.ASCII.GetBytes("a-sentence-that-stands-nowhere-else");
        using (var store = StudyStore.Open(Path))
        {
            var kept = store.Create("kept", "films");
            var study = store.Create("gone", "films");
            store.AddFilm(study.Id, "film", secret);
            store.Append(study.Id, "", new FollowUpAsked(Encoding.ASCII.GetString(secret)));
            Assert.True(store.Delete(study.Id));
            Assert.False(store.Delete(study.Id));
            Assert.Equal(kept.Id, Assert.Single(store.List()).Id);
            Assert.Empty(store.Entries(study.Id));
        }

        Assert.All(Directory.EnumerateFiles(folder.Path), f => Assert.Equal(-1, File.ReadAllBytes(f).AsSpan().IndexOf(secret)));
    }

    [Fact]
    public void AnEntryForNoStudy_IsRefused_AndKeepsNothing()
    {
        using var store = StudyStore.Open(Path);
        Assert.Throws<StoreException>(() => store.Append("nowhere", "", new FollowUpAsked("note")));
        Assert.Empty(store.Entries("nowhere"));
    }

    [Fact]
    public void AFileOfALaterVersion_IsRefused()
    {
        StudyStore.Open(Path).Dispose();
        using (var connection = new SqliteConnection($"Data Source={Path};Pooling=False"))
        {
            connection.Open();
            using var command = connection.CreateCommand();
            command.CommandText = "PRAGMA user_version = 99";
            command.ExecuteNonQuery();
        }

        Assert.Contains("later version", Assert.Throws<StoreException>(() => StudyStore.Open(Path)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void AFileOfTheFirstVersion_IsBroughtUpToDate_AndKeepsItsStudies()
    {
        using (var connection = new SqliteConnection($"Data Source={Path};Pooling=False"))
        {
            connection.Open();
            using var command = connection.CreateCommand();
            // The tables of version 1, with a study in them.
            command.CommandText = """
                CREATE TABLE studies (id TEXT PRIMARY KEY, title TEXT NOT NULL, origin TEXT NOT NULL, created_at TEXT NOT NULL) STRICT;
                CREATE TABLE films (study TEXT NOT NULL REFERENCES studies(id) ON DELETE CASCADE, id TEXT NOT NULL, name TEXT NOT NULL, sha256 TEXT NOT NULL,
                    content BLOB NOT NULL, stated TEXT, placements TEXT, PRIMARY KEY (study, id), UNIQUE (study, sha256)) STRICT;
                CREATE TABLE entries (number INTEGER PRIMARY KEY AUTOINCREMENT, study TEXT NOT NULL REFERENCES studies(id) ON DELETE CASCADE,
                    at TEXT NOT NULL, who TEXT NOT NULL, event TEXT NOT NULL) STRICT;
                CREATE TABLE practice (number INTEGER PRIMARY KEY AUTOINCREMENT, at TEXT NOT NULL, kind TEXT NOT NULL, result TEXT NOT NULL) STRICT;
                INSERT INTO studies VALUES ('old', 'kept from before', 'films', '2026-01-02T03:04:05.0000000+00:00');
                PRAGMA user_version = 1;
                """;
            command.ExecuteNonQuery();
        }

        using var store = StudyStore.Open(Path);
        Assert.Equal(("kept from before", null), (store.Find("old")!.Title, store.Find("old")!.Source));
        Assert.Equal("dicom:1.2", store.FindOrCreate("dicom:1.2", "new", "watched").Source);
    }

    [Fact]
    public void WhatArrivesAgain_IsTheSameStudy_UntilItIsDeleted()
    {
        using var store = StudyStore.Open(Path);
        var first = store.FindOrCreate("dicom:1.2", "title", "watched").Id;
        Assert.Equal(first, store.FindOrCreate("dicom:1.2", "other", "archive").Id);
        Assert.NotEqual(first, store.FindOrCreate("dicom:1.3", "title", "watched").Id);
        store.Delete(first);
        Assert.Null(store.FindBySource("dicom:1.2"));
    }

    [Fact]
    public void AFilmThatArrivedByItself_IsKnownAsDeleted_WithItsStudy()
    {
        using var store = StudyStore.Open(Path);
        byte[] arrived = [1, 2, 3], opened = [4, 5, 6];
        var watched = store.FindOrCreate("file:1", "title", "watched").Id;
        var byHand = store.Create("title", "files").Id;
        store.AddFilm(watched, "a", arrived);
        store.AddFilm(byHand, "b", opened);
        Assert.False(store.WasDeleted(arrived));
        store.Delete(watched);
        store.Delete(byHand);
        Assert.True(store.WasDeleted(arrived));
        Assert.False(store.WasDeleted(opened));
    }

    [Fact]
    public void AFileThatIsNoStore_IsRefused()
    {
        folder.Write("studies.db", Encoding.ASCII.GetBytes(new string('x', 5000)));
        Assert.Throws<StoreException>(() => StudyStore.Open(Path));
    }

    [Fact]
    public void PracticeResults_AreKept_AndDeletedTogether()
    {
        using var store = StudyStore.Open(Path);
        store.AddPractice("lines", "{\"a\":1}");
        Assert.Equal("{\"a\":1}", Assert.Single(store.Practice()).Result);
        store.DeletePractice();
        Assert.Empty(store.Practice());
    }
}
