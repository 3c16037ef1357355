namespace ElbowAssist.Anatomy.Measurements;

/// <summary>Reason codes that follow from the landmarks of a film alone.</summary>
public static class ReasonCodes
{
    /// <summary>Levels of the humeral shaft are off the film or hidden.</summary>
    public const string HumeralLevelsMissing = "humeral-levels-missing";

    /// <summary>The humeral levels on the film span too short a stretch.</summary>
    public const string HumeralLevelsSpanShort = "humeral-levels-span-short";

    /// <summary>The capitellar outline is hidden, or its nucleus is not ossified yet.</summary>
    public const string CapitellumNotOutlined = "capitellum-not-outlined";

    /// <summary>The trochlear lip is hidden, or not ossified yet.</summary>
    public const string TrochleaNotOutlined = "trochlea-not-outlined";

    /// <summary>The capitellar physis is closed or not visible.</summary>
    public const string PhysisNotVisible = "physis-not-visible";

    /// <summary>The crossing of the hourglass is not visible.</summary>
    public const string WaistNotVisible = "hourglass-waist-not-visible";

    /// <summary>Levels of the radius are off the film or hidden.</summary>
    public const string RadialLevelsMissing = "radial-levels-missing";

    /// <summary>The articular surface of the radial head is hidden, or not ossified yet.</summary>
    public const string RadialHeadNotVisible = "radial-head-not-visible";

    /// <summary>Levels of the ulna are off the film or hidden.</summary>
    public const string UlnarLevelsMissing = "ulnar-levels-missing";

    /// <summary>The trochlear notch is hidden.</summary>
    public const string NotchNotVisible = "notch-not-visible";

    /// <summary>The edge of the fat pad could not be followed on this film.</summary>
    public const string FatPadNotFollowed = "fat-pad-not-followed";

    /// <summary>Landmarks coincide or leave the construction undefined.</summary>
    public const string ConstructionUndefined = "construction-undefined";

    /// <summary>The spread of the landmarks is too wide for the value to mean anything.</summary>
    public const string LandmarkSpread = "landmark-spread";

    /// <summary>The redraw interval lies on both sides of a decision limit.</summary>
    public const string IntervalCrossesLimit = "interval-crosses-limit";

    /// <summary>Two accepted constructions lie on different sides of a decision limit.</summary>
    public const string ConstructionsDiffer = "constructions-differ";
}
