namespace ElbowAssist.Anatomy.Rules;

/// <summary>An injury and what to look for beside it.</summary>
/// <param name="Code">Prompt code.</param>
/// <param name="When">Injuries that must all be marked.</param>
/// <param name="AppliesTo">Maturities it applies to; an unknown one gets every row.</param>
/// <param name="Text">What to look for.</param>
/// <param name="Sources">Publications.</param>
public sealed record AssociatedInjury(
    string Code,
    IReadOnlyList<SuspectedInjury> When,
    IReadOnlyList<Maturity> AppliesTo,
    string Text,
    IReadOnlyList<Publication> Sources);

/// <summary>Injuries that come together and are missed when the search stops at the first.</summary>
public static class AssociatedInjuryTable
{
    private static readonly Maturity[] Everyone = [Maturity.Child, Maturity.Adolescent, Maturity.Adult];
    private static readonly Maturity[] Growing = [Maturity.Child, Maturity.Adolescent];
    private static readonly Maturity[] Grown = [Maturity.Adolescent, Maturity.Adult];

    /// <summary>Every row, the more specific before the more general.</summary>
    public static IReadOnlyList<AssociatedInjury> Rows { get; } =
    [
        new("associated.ulna-radial-head", [SuspectedInjury.UlnarShaft], Everyone,
            "Ulnar fracture or bow marked: is the radial head in place on every view? The radiology report missed it in 12 of 47.",
            [Publications.MonteggiaMissed, Publications.MonteggiaDelay]),
        new("associated.radial-head-ulna", [SuspectedInjury.RadialHeadDislocation], Everyone,
            "Dislocation of the radial head marked: trace the whole ulna for a fracture or a bow, if need be on a forearm film.",
            [Publications.MonteggiaDelay]),
        new("associated.dislocation-coronoid-radial-head", [SuspectedInjury.ElbowDislocation], Grown,
            "Dislocation of the elbow marked: look for a coronoid and a radial head fracture with it.",
            [Publications.TerribleTriad]),
        new("associated.coronoid-radial-head", [SuspectedInjury.Coronoid], Everyone,
            "Coronoid marked: look at the radial head, and ask whether the elbow was dislocated.",
            [Publications.TerribleTriad]),
        new("associated.radial-head-beyond", [SuspectedInjury.RadialHeadOrNeck], Grown,
            "Radial head or neck marked: look at the coronoid and the capitellum, and ask about the distal radioulnar joint and the wrist.",
            [Publications.TerribleTriad, Publications.EssexLoprestiReview]),
        new("associated.radial-neck-child", [SuspectedInjury.RadialHeadOrNeck], Growing,
            "Radial head or neck marked: trace the proximal ulna and look at the medial epicondyle, and ask about the distal radioulnar joint.",
            [Publications.MonteggiaMissed, Publications.EssexLoprestiReview]),
        new("associated.supracondylar-forearm", [SuspectedInjury.Supracondylar], Growing,
            "Supracondylar fracture marked: a forearm or wrist fracture came with it in 3.5 to 5.3 % of series.",
            [Publications.Calogero]),
        new("associated.lateral-condyle-view", [SuspectedInjury.LateralCondyle], Growing,
            "Lateral condyle marked: the internal oblique view shows the metaphyseal flake best.",
            [Publications.LateralCondyleExit]),
        new("associated.epicondyle-joint", [SuspectedInjury.MedialEpicondyle], Growing,
            "Medial epicondyle marked: look for it inside the joint, and ask whether the elbow was dislocated.",
            [Publications.IncarceratedEpicondyle]),
    ];

    internal static IEnumerable<RulePrompt> Apply(RuleInput input) => Rows
        .Where(r => r.When.All(input.Marks.Injuries.Contains))
        .Where(r => input.Maturity == Maturity.Unknown || r.AppliesTo.Contains(input.Maturity))
        .Select(r => new RulePrompt(r.Code, r.Text, Publication.Join(r.Sources), Urgency.Strong));
}
