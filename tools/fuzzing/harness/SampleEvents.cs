using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Rules;
using ElbowAssist.Geometry;
using ElbowAssist.Reading;
using ElbowAssist.Reading.Walks;
using ElbowAssist.Store;
using ElbowAssist.Store.Entries;

namespace ElbowAssist.Fuzzing;

/// <summary>An event of every kind, and a store that holds them.</summary>
internal static class SampleEvents
{
    private const string Film = "film-1";
    private static readonly DateTimeOffset At = new(2026, 4, 1, 10, 0, 0, TimeSpan.Zero);

    public static IReadOnlyList<StudyEvent> All { get; } =
    [
        new QuestionStated(100, Sex.Female, Side.Left, Maturity.Child),
        new FilmStated(Film, Side.Left, View.Lateral, FilmContext.Acute, true),
        new WalkBegun(new WalkKeeper(WalkDefinition.ChildWalk, TimeProvider.System).Begin(false) with { StartedAt = At }),
        new Answered(new WalkAnswer("lines.anterior-humeral", ["yes"], "a note", At, false)),
        new OwnLineLaid(Film, "anterior-humeral-line", new Point(1, 2), new Point(3, 4), false),
        new LineCompared(Film, "anterior-humeral-line", [new ProposedValue(Film, "anterior-humeral-line.position", 0.5, MeasurementState.Measured)]),
        new ProposalsShown(new ToolShown(WalkTopic.Alignment, [new ProposedValue(Film, "anterior-humeral-line.position", 0.5, MeasurementState.Measured)], At)),
        new EnhancedOpened(new EnhancedShown("lines.anterior-humeral", At)),
        new PromptDealtWith(new PromptSettled("trace-radial-head", "a note", At)),
        new LandmarkLaid(new LandmarkMove(Film, "humerus.waist", new Point(1, 2), new Point(3, 4), At)),
        new LandmarkGivenBack(Film, "humerus.waist"),
        new LineBrought(Film, "anterior-humeral-line", new Point(1, 2), new Point(3, 4), true),
        new FollowUpAsked("a note"),
        new OutcomeEntered("a note"),
        new WalkClosed(At),
    ];

    /// <summary>A store with one film and all of them, as a file.</summary>
    public static byte[] Store(string path)
    {
        using (var store = StudyStore.Open(path))
        {
            var study = store.Create("sample", "films");
            store.AddFilm(study.Id, "film", "pixels"u8.ToArray(), "{}");
            store.Append(study.Id, "A", All);
        }

        return File.ReadAllBytes(path);
    }
}
