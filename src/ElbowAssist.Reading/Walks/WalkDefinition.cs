using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Rules;
using static ElbowAssist.Anatomy.Landmarks.LandmarkNames;
using static ElbowAssist.Reading.Walks.WalkVersion;

namespace ElbowAssist.Reading.Walks;

/// <summary>
/// The systematic read as data. The order of the steps is common practice; no publication prescribes it.
/// </summary>
public sealed class WalkDefinition
{
    private static readonly WalkStep[] All =
    [
        new(WalkTopic.History, "History and question",
        [
            Ask("history.trauma", "Was there an injury?", WalkChoices.YesNo),
            Note("history.mechanism", "Mechanism and time since"),
            Note("history.pain", "Where does it hurt, and can the elbow be extended?"),
            Ask("history.unwell", "Fever, or unwell?", WalkChoices.YesNo),
            Ask("history.earlier", "Earlier injury, operation or metal?", WalkChoices.YesNo),
            Note("history.question", "Question put to the films"),
        ]),
        new(WalkTopic.Views, "Views and what they carry",
        [
            Ask("views.identity", "Right patient, side marker, date?", WalkChoices.YesNo),
            Ask("views.true-lateral", "Is the lateral a true lateral?", WalkChoices.YesNo),
            Ask("views.flexed", "Is the lateral flexed near 90°?", WalkChoices.YesNo),
            Ask("views.ap-extended", "Was every AP taken in full extension and supination?", WalkChoices.YesNo),
            Note("views.limits", "What can these films not show?"),
        ]),
        new(WalkTopic.Alignment, "Alignment",
        [
            Ask("alignment.anterior-humeral-line", "Where does the anterior humeral line cross?", WalkChoices.AnteriorLine, Distal),
            Ask("alignment.radiocapitellar-lateral", "Radiocapitellar line, lateral", WalkChoices.Crossing, RadialHead),
            Ask("alignment.radiocapitellar-ap", "Radiocapitellar line, AP", WalkChoices.Crossing, ApLateral),
            Ask("alignment.ulnohumeral", "Do trochlea and notch run parallel?", WalkChoices.YesNo, Notch),
        ]),
        new(WalkTopic.Effusion, "Effusion",
        [
            Ask("effusion.anterior", "Anterior fat pad", WalkChoices.AnteriorFatPad, Distal),
            Ask("effusion.posterior", "Posterior fat pad", WalkChoices.PosteriorFatPad, Distal),
            Ask("effusion.call", "Is there an effusion?", WalkChoices.YesNo),
        ]),
        new(WalkTopic.Cortex, "Every cortex",
        [
            Ask("cortex.humerus-anterior", "Humerus, anterior cortex", WalkChoices.Cortex, Distal),
            Ask("cortex.humerus-posterior", "Humerus, posterior cortex", WalkChoices.Cortex, Distal),
            Ask("cortex.medial-column", "Medial column and epicondyle", WalkChoices.Cortex, ApMedial),
            Ask("cortex.lateral-column", "Lateral column and condyle", WalkChoices.Cortex, ApLateral),
            Ask("cortex.capitellum-trochlea", "Capitellum and trochlea", WalkChoices.Cortex, Capitellum, ApLateral),
            Ask("cortex.radial-head", "Radial head", WalkChoices.Cortex, RadialHead, ApRadius),
            Ask("cortex.radial-neck", "Radial neck and shaft", WalkChoices.Cortex, RadialHead, ApRadius),
            Ask("cortex.coronoid", "Coronoid", WalkChoices.Cortex, Notch),
            Ask("cortex.olecranon", "Olecranon", WalkChoices.Cortex, Olecranon),
            Ask("cortex.ulna", "Ulna to the edge of the film", WalkChoices.Cortex, UlnarShaft),
        ]),
        new(WalkTopic.GrowthCentres, "Growth centres",
        [
            Ask("growth.capitellum", "Capitellum", WalkChoices.Centre, Child),
            Ask("growth.radial-head", "Radial head", WalkChoices.Centre, Child),
            Ask("growth.medial-epicondyle", "Medial epicondyle", WalkChoices.Centre, Child),
            Ask("growth.trochlea", "Trochlea", WalkChoices.Centre, Child),
            Ask("growth.olecranon", "Olecranon", WalkChoices.Centre, Child),
            Ask("growth.lateral-epicondyle", "Lateral epicondyle", WalkChoices.Centre, Child),
        ]),
        new(WalkTopic.SecondLook, "Second look where it is missed most",
        [
            Ask("second.radial-head", "Radial head and neck", WalkChoices.Cortex, RadialHead, ApRadius),
            Ask("second.supracondylar", "Supracondylar cortex", WalkChoices.Cortex, Child, Distal),
            Ask("second.lateral-condyle", "Lateral condyle", WalkChoices.Cortex, Child, ApLateral),
            Ask("second.medial-epicondyle", "Medial epicondyle in its place?", WalkChoices.YesNo, Child, ApMedial),
            Ask("second.ulna", "Ulna: fracture or bow", WalkChoices.Cortex, Child, UlnarShaft),
            Ask("second.coronoid", "Coronoid", WalkChoices.Cortex, Adult, Notch),
            Ask("second.capitellum", "Capitellum", WalkChoices.Cortex, Adult, Capitellum),
            Ask("second.olecranon", "Olecranon", WalkChoices.Cortex, Olecranon),
        ]),
        new(WalkTopic.Conclusion, "Conclusion",
        [
            Several("conclusion.injuries", "Suspected injuries", Injuries),
            Several("conclusion.state", "Mark what applies",
                [new("displaced", "displaced"), new("dislocated", "dislocated"), new("reduction-done", "reduction done"), new("open", "open")]),
            Ask("conclusion.outcome", "Conclusion", WalkChoices.Conclusion),
            Note("conclusion.not-judged", "What could not be judged"),
            Note("conclusion.next", "Next step under the local protocol"),
        ]),
    ];

    private WalkDefinition(WalkVersion version)
    {
        Version = version;
        Steps =
        [
            .. All.Select(s => s with { Items = [.. s.Items.Where(i => i.Version == Both || i.Version == version)] })
                .Where(s => s.Items.Count > 0),
        ];
    }

    /// <summary>The walk through a grown elbow.</summary>
    public static WalkDefinition AdultWalk { get; } = new(Adult);

    /// <summary>The walk through a growing elbow.</summary>
    public static WalkDefinition ChildWalk { get; } = new(Child);

    /// <summary>Adult or child.</summary>
    public WalkVersion Version { get; }

    /// <summary>Steps in order.</summary>
    public IReadOnlyList<WalkStep> Steps { get; }

    /// <summary>The walk for a maturity; adolescents get the child's, which holds more. Null until adult or child is known.</summary>
    public static WalkDefinition? For(Maturity maturity) => maturity switch
    {
        Maturity.Adult => AdultWalk,
        Maturity.Child or Maturity.Adolescent => ChildWalk,
        _ => null,
    };

    /// <summary>The question of an identifier, or null.</summary>
    public WalkItem? Find(string itemId) => Steps.SelectMany(s => s.Items).FirstOrDefault(i => i.Id == itemId);

    private static IReadOnlyList<WalkChoice> Injuries =>
        [.. Enum.GetValues<SuspectedInjury>().Select(i => new WalkChoice(InjuryWords.CodeOf(i), InjuryWords.LabelOf(i)))];

    private static WalkCrop Distal => new(View.Lateral, [HumerusFossaRoof, HumerusWaist], 4);

    private static WalkCrop Capitellum => new(View.Lateral, [CapitellumRim(1), CapitellumRim(4)], 3);

    private static WalkCrop RadialHead => new(View.Lateral, [RadiusHeadAnterior, RadiusHeadPosterior], 3);

    private static WalkCrop Notch => new(View.Lateral, [UlnaCoronoid, UlnaNotch(2)], 3);

    private static WalkCrop Olecranon => new(View.Lateral, [UlnaOlecranon], 3);

    private static WalkCrop UlnarShaft => new(View.Lateral, [UlnaPosterior(1), UlnaPosterior(2)], 5);

    private static WalkCrop ApLateral => new(View.Ap, [HumerusEpicondyleLateral, CapitellumDistal], 3);

    private static WalkCrop ApMedial => new(View.Ap, [HumerusEpicondyleMedial], 3);

    private static WalkCrop ApRadius => new(View.Ap, [RadiusHeadLateral, RadiusHeadMedial], 3);

    private static WalkItem Ask(string id, string question, IReadOnlyList<WalkChoice> choices, params WalkCrop[] crops) =>
        new(id, question, choices, AllowsSeveral: false, Both, crops);

    private static WalkItem Ask(string id, string question, IReadOnlyList<WalkChoice> choices, WalkVersion version, params WalkCrop[] crops) =>
        new(id, question, choices, AllowsSeveral: false, version, crops);

    private static WalkItem Several(string id, string question, IReadOnlyList<WalkChoice> choices) =>
        new(id, question, choices, AllowsSeveral: true, Both, []);

    private static WalkItem Note(string id, string question) => new(id, question, [], AllowsSeveral: false, Both, []);
}
