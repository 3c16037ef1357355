namespace ElbowAssist.Reading.Reasons;

/// <summary>Reason codes that follow from the film and what is known of it; those that follow from landmarks alone stand with the measurements.</summary>
public static class FilmReasons
{
#pragma warning disable CS1591 // the sentence of each code stands in reasons.json
    public const string NotARadiograph = "not-a-radiograph";
    public const string NotAnElbow = "not-an-elbow";
    public const string ViewNotRecognised = "view-not-recognised";
    public const string ImageUnreadable = "image-unreadable";
    public const string ViewStatedOtherwise = "view-stated-otherwise";
    public const string ObliqueView = "oblique-view";
    public const string FilmRotated = "film-rotated";
    public const string ViewErrorUnknown = "view-error-unknown";
    public const string FlexionUnsuitable = "flexion-unsuitable";
    public const string FlexionUnknown = "flexion-unknown";
    public const string NotStatedExtendedSupinated = "not-stated-extended-supinated";
    public const string HumerusNotFlat = "humerus-not-flat";
    public const string PhysisClosed = "physis-closed";
    public const string SpacingUnknown = "spacing-unknown";
    public const string NotAfterReduction = "not-after-reduction";
    public const string AdultsOnly = "adults-only";
    public const string AgeUnknown = "age-unknown";
    public const string CastOverSoftTissue = "cast-over-soft-tissue";
    public const string NeedsForearmFilm = "needs-forearm-film";
    public const string HardwareAcross = "hardware-across";
    public const string CastAcross = "cast-across";
    public const string HardwareSeen = "hardware-seen";
    public const string CastSeen = "cast-seen";
    public const string ExposureNoisy = "exposure-noisy";
    public const string ExposureBurnedOut = "exposure-burned-out";
    public const string ImageBlurred = "image-blurred";
    public const string PassesDisagree = "passes-disagree";
    public const string UnlikeTraining = "unlike-training";
    public const string ShapeImplausible = "shape-implausible";
    public const string ResolutionLow = "resolution-low";
#pragma warning restore CS1591
}
