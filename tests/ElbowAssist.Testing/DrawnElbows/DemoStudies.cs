using ElbowAssist.Anatomy;
using ElbowAssist.Reading.Studies;
using ElbowAssist.Reading.Walks;

namespace ElbowAssist.Testing.DrawnElbows;

/// <summary>A film of a demo study: its drawing and what is known of it.</summary>
public sealed record DemoFilm(string Id, DrawnElbow Elbow, View View, Side Side, FilmContext Context, int Seed);

/// <summary>An invented patient with films, a finished read and the question.</summary>
public sealed record DemoStudy(string Name, Patient Patient, Side InjuredSide, double SpacingMm, IReadOnlyList<DemoFilm> Films, WalkRecord Walk)
{
    /// <summary>The study, measured by the project's assembler.</summary>
    public Study Assemble() => StudyAssembler.Assemble(new()
    {
        Tool = DrawnStudies.Tool,
        InjuredSide = InjuredSide,
        Walk = Walk,
        Films = [.. Films.Select(f => DrawnStudies.Film(f.Id, f.Elbow, f.View, f.Side, Patient, f.Context, f.Seed, SpacingMm))],
    });
}

/// <summary>Two invented studies.</summary>
public static class DemoStudies
{
    /// <summary>Both.</summary>
    public static IReadOnlyList<DemoStudy> All { get; } = [AdultWithEffusion(), ChildWithSupracondylarFracture()];

    /// <summary>An adult who fell on the hand: effusion, no fracture line drawn.</summary>
    public static DemoStudy AdultWithEffusion()
    {
        var elbow = new DrawnElbow { FatPadAngle = 27, RadialOffset = 0.03 };
        var walk = new WalkScript(WalkDefinition.AdultWalk)
            .Answer("history.trauma", WalkChoices.Yes)
            .Note("history.mechanism", "Fall on the outstretched hand, 3 hours ago")
            .Note("history.pain", "Radial side; cannot extend fully")
            .Answer("history.unwell", WalkChoices.No)
            .Answer("history.earlier", WalkChoices.No)
            .Note("history.question", "Fracture?")
            .Answer("views.ap-extended", WalkChoices.No)
            .Rest(WalkTopic.Views)
            .Note("views.limits", "AP taken in slight flexion")
            .Answer("alignment.anterior-humeral-line", "middle-third")
            .Rest(WalkTopic.Alignment)
            .Show(WalkTopic.Alignment)
            .Answer("effusion.anterior", "lifted")
            .Answer("effusion.posterior", WalkChoices.Seen)
            .Answer("effusion.call", WalkChoices.Yes)
            .Answer("cortex.radial-head", WalkChoices.CannotTrace)
            .Rest(WalkTopic.Cortex)
            .Answer("second.radial-head", WalkChoices.CannotTrace)
            .Rest(WalkTopic.SecondLook)
            .Answer("conclusion.injuries", "radial-head-or-neck")
            .Answer("conclusion.state")
            .Answer("conclusion.outcome", "fracture-suspected")
            .Note("conclusion.not-judged", "Anterolateral rim of the radial head")
            .Note("conclusion.next", "Treat as radial head fracture; radial head view at review in one week")
            .Conclude();
        return new("adult-effusion", new(41 * 12, Sex.Female), Side.Right, 0.2,
        [
            new("right-lateral.png", elbow with { Mirrored = true }, View.Lateral, Side.Right, FilmContext.Acute, 11),
            new("right-ap.png", elbow with { Mirrored = true }, View.Ap, Side.Right, FilmContext.Acute, 12),
        ], walk.Record);
    }

    /// <summary>A child of six with a displaced supracondylar fracture in extension; films of both sides were sent.</summary>
    public static DemoStudy ChildWithSupracondylarFracture()
    {
        var healthy = new DrawnElbow { W = 95, Capitellum = 43, RadialHead = 92, Growing = true, CentreBeforeLine = -0.1, Baumann = 71 };
        var broken = healthy with { BackwardShift = 0.75, Extension = 24, Baumann = 84, FatPadAngle = 30 };
        var walk = new WalkScript(WalkDefinition.ChildWalk)
            .Answer("history.trauma", WalkChoices.Yes)
            .Note("history.mechanism", "Fall from a climbing frame, 1 hour ago")
            .Note("history.pain", "Whole distal arm; holds the elbow still")
            .Answer("history.unwell", WalkChoices.No)
            .Answer("history.earlier", WalkChoices.No)
            .Note("history.question", "Fracture? Displacement?")
            .Answer("views.true-lateral", WalkChoices.CannotTell)
            .Answer("views.flexed", WalkChoices.No)
            .Answer("views.ap-extended", WalkChoices.No)
            .Rest(WalkTopic.Views)
            .Note("views.limits", "Left elbow not flexed to 90°: fat pads not judged")
            .Answer("alignment.anterior-humeral-line", "capitellum-behind-line")
            .Rest(WalkTopic.Alignment)
            .Show(WalkTopic.Alignment)
            .Answer("effusion.anterior", WalkChoices.CannotTell)
            .Answer("effusion.posterior", WalkChoices.CannotTell)
            .Answer("effusion.call", WalkChoices.CannotTell)
            .Answer("cortex.humerus-anterior", WalkChoices.TracedBreak)
            .Answer("cortex.humerus-posterior", WalkChoices.TracedBreak)
            .Answer("cortex.medial-column", WalkChoices.CannotTrace)
            .Rest(WalkTopic.Cortex)
            .Answer("growth.trochlea", WalkChoices.NotSeen)
            .Answer("growth.olecranon", WalkChoices.NotSeen)
            .Answer("growth.lateral-epicondyle", WalkChoices.NotSeen)
            .Answer("growth.radial-head", WalkChoices.Seen)
            .Answer("growth.medial-epicondyle", WalkChoices.Seen)
            .Rest(WalkTopic.GrowthCentres)
            .Answer("second.supracondylar", WalkChoices.TracedBreak)
            .Rest(WalkTopic.SecondLook)
            .Answer("conclusion.injuries", "supracondylar")
            .Answer("conclusion.state", "displaced")
            .Answer("conclusion.outcome", "fracture-seen")
            .Note("conclusion.not-judged", "Medial column; fat pads")
            .Note("conclusion.next", "Orthopaedics called at 09:40; nerves and pulse documented before any reduction")
            .Conclude();
        return new("child-supracondylar", new((6 * 12) + 2, Sex.Male), Side.Left, 0.15,
        [
            new("left-lateral.png", broken, View.Lateral, Side.Left, FilmContext.Acute, 21),
            new("left-ap.png", broken, View.Ap, Side.Left, FilmContext.Acute, 22),
            new("right-lateral.png", healthy with { Mirrored = true }, View.Lateral, Side.Right, FilmContext.Acute, 23),
            new("right-ap.png", healthy with { Mirrored = true }, View.Ap, Side.Right, FilmContext.Acute, 24),
        ], walk.Record);
    }
}
