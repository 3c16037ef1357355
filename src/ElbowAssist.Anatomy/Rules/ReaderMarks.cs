using System.Collections.Immutable;
using ElbowAssist.Anatomy.Rules.Growth;

namespace ElbowAssist.Anatomy.Rules;

/// <summary>A call of the reader that may not have been made yet.</summary>
public enum Call
{
    /// <summary>Not looked at, or not answered.</summary>
    NotMade,

    /// <summary>Yes.</summary>
    Yes,

    /// <summary>No.</summary>
    No,

    /// <summary>Looked, and could not tell.</summary>
    CannotTell,
}

/// <summary>What the reader suspects or has marked; the rules never add to it.</summary>
public enum SuspectedInjury
{
    /// <summary>Supracondylar fracture of the humerus.</summary>
    Supracondylar,

    /// <summary>Lateral condyle of the humerus.</summary>
    LateralCondyle,

    /// <summary>Medial epicondyle of the humerus.</summary>
    MedialEpicondyle,

    /// <summary>Separation of the whole distal humeral epiphysis.</summary>
    PhysealSeparation,

    /// <summary>Radial head or neck.</summary>
    RadialHeadOrNeck,

    /// <summary>Dislocation of the radial head alone.</summary>
    RadialHeadDislocation,

    /// <summary>Ulnar shaft, broken or bowed.</summary>
    UlnarShaft,

    /// <summary>Olecranon.</summary>
    Olecranon,

    /// <summary>Coronoid.</summary>
    Coronoid,

    /// <summary>Dislocation of the elbow.</summary>
    ElbowDislocation,
}

/// <summary>Everything the reader has marked on a study so far.</summary>
public sealed record ReaderMarks
{
    /// <summary>Nothing marked.</summary>
    public static ReaderMarks None { get; } = new();

    /// <summary>Whether there was an injury.</summary>
    public Call Trauma { get; init; }

    /// <summary>Whether the reader sees a joint effusion.</summary>
    public Call Effusion { get; init; }

    /// <summary>Suspected injuries.</summary>
    public ImmutableSortedSet<SuspectedInjury> Injuries { get; init; } = [];

    /// <summary>A fracture is displaced.</summary>
    public bool Displaced { get; init; }

    /// <summary>A joint is dislocated.</summary>
    public bool Dislocated { get; init; }

    /// <summary>A reduction has been done.</summary>
    public bool ReductionDone { get; init; }

    /// <summary>The injury is open.</summary>
    public bool Open { get; init; }

    /// <summary>Fever, or the patient is unwell.</summary>
    public bool Unwell { get; init; }

    /// <summary>Growth centres by the reader's mark; a missing entry is one not checked.</summary>
    public ImmutableSortedDictionary<GrowthCentre, CentreMark> GrowthCentres { get; init; } =
        ImmutableSortedDictionary<GrowthCentre, CentreMark>.Empty;

    internal bool AnyDislocation =>
        Dislocated || Injuries.Contains(SuspectedInjury.ElbowDislocation) || Injuries.Contains(SuspectedInjury.RadialHeadDislocation);
}
