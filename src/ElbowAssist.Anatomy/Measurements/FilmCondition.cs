namespace ElbowAssist.Anatomy.Measurements;

/// <summary>What must hold of a film, beyond its landmarks, before a measurement means what it says.</summary>
public enum FilmCondition
{
    /// <summary>The film is not rotated away from its view.</summary>
    TrueView,

    /// <summary>The elbow is flexed near a right angle.</summary>
    FlexedNearRightAngle,

    /// <summary>The reader has said that the elbow is in full extension and supination.</summary>
    FullExtensionAndSupination,

    /// <summary>The humerus lies flat to the detector.</summary>
    HumerusFlatToDetector,

    /// <summary>The physis is open: the patient is of an age at which it can be.</summary>
    PhysisOpen,

    /// <summary>The pixel spacing is known.</summary>
    SpacingKnown,

    /// <summary>The film was taken after a reduction.</summary>
    AfterReduction,

    /// <summary>The patient is an adult.</summary>
    Adult,

    /// <summary>No cast or splint lies over the soft tissue.</summary>
    SoftTissueUncovered,

    /// <summary>A reader has placed the landmarks by hand on a film of the whole forearm.</summary>
    ForearmFilmByHand,
}
