namespace ElbowAssist.Reading.Walks;

/// <summary>Answer codes that mean the same throughout the walk.</summary>
public static class WalkChoices
{
#pragma warning disable CS1591 // each code is the answer it names
    public const string Yes = "yes";
    public const string No = "no";
    public const string CannotTell = "cannot-tell";
    public const string TracedIntact = "traced-intact";
    public const string TracedBreak = "traced-break";
    public const string CannotTrace = "cannot-trace";
    public const string Seen = "seen";
    public const string NotSeen = "not-seen";
    public const string Fused = "fused";
    public const string NotChecked = "not-checked";
#pragma warning restore CS1591

    /// <summary>Yes, no, cannot tell.</summary>
    public static IReadOnlyList<WalkChoice> YesNo { get; } =
        [new(Yes, "yes"), new(No, "no"), new(CannotTell, "cannot tell")];

    /// <summary>The three answers for a cortex.</summary>
    public static IReadOnlyList<WalkChoice> Cortex { get; } =
        [new(TracedIntact, "traced, intact"), new(TracedBreak, "traced, break"), new(CannotTrace, "can't trace")];

    /// <summary>The marks of a growth centre.</summary>
    public static IReadOnlyList<WalkChoice> Centre { get; } =
        [new(Seen, "seen"), new(NotSeen, "not seen"), new(Fused, "fused"), new(NotChecked, "not checked")];

    /// <summary>Thirds of the capitellum.</summary>
    public static IReadOnlyList<WalkChoice> AnteriorLine { get; } =
    [
        new("capitellum-behind-line", "capitellum behind the line"),
        new("anterior-third", "anterior third"),
        new("middle-third", "middle third"),
        new("posterior-third", "posterior third"),
        new("capitellum-before-line", "capitellum in front of the line"),
        new(CannotTell, "cannot tell"),
    ];

    /// <summary>Whether a line meets the capitellum.</summary>
    public static IReadOnlyList<WalkChoice> Crossing { get; } =
        [new("crosses", "crosses the capitellum"), new("misses", "misses the capitellum"), new(CannotTell, "cannot tell")];

    /// <summary>Place of the anterior fat pad.</summary>
    public static IReadOnlyList<WalkChoice> AnteriorFatPad { get; } =
        [new("flat", "along the cortex"), new("lifted", "lifted"), new(NotSeen, "not seen"), new(CannotTell, "cannot tell")];

    /// <summary>Whether the posterior fat pad shows.</summary>
    public static IReadOnlyList<WalkChoice> PosteriorFatPad { get; } =
        [new(Seen, "seen"), new(NotSeen, "not seen"), new(CannotTell, "cannot tell")];

    /// <summary>The outcome in the reader's words; none of them closes the search.</summary>
    public static IReadOnlyList<WalkChoice> Conclusion { get; } =
    [
        new("fracture-seen", "fracture seen"),
        new("fracture-suspected", "fracture suspected"),
        new("no-fracture-seen", "no fracture seen on these films"),
        new("cannot-judge", "these films cannot be judged"),
    ];
}
