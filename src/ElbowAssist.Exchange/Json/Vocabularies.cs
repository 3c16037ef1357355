using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Reading;

namespace ElbowAssist.Exchange.Json;

/// <summary>The words of <c>elbowassist/reading/1</c> and of everything that shares its blocks.</summary>
public static class Vocabularies
{
    /// <summary>View of a film.</summary>
    public static Vocabulary<View> View { get; } = new(
        (Anatomy.View.Lateral, "lateral"),
        (Anatomy.View.Ap, "ap"),
        (Anatomy.View.Oblique, "oblique"),
        (Anatomy.View.Unknown, "unknown"));

    /// <summary>Side of the body.</summary>
    public static Vocabulary<Side> Side { get; } = new(
        (Anatomy.Side.Left, "left"),
        (Anatomy.Side.Right, "right"),
        (Anatomy.Side.Unknown, "unknown"));

    /// <summary>Sex.</summary>
    public static Vocabulary<Sex> Sex { get; } = new((Anatomy.Sex.Female, "F"), (Anatomy.Sex.Male, "M"));

    /// <summary>Why and when the film was taken.</summary>
    public static Vocabulary<FilmContext> Context { get; } = new(
        (FilmContext.Acute, "acute"),
        (FilmContext.AfterReduction, "after-reduction"),
        (FilmContext.Cast, "cast"),
        (FilmContext.Fixation, "fixation"),
        (FilmContext.FollowUp, "follow-up"),
        (FilmContext.Unknown, "unknown"));

    /// <summary>Kind of a landmark.</summary>
    public static Vocabulary<LandmarkKind> Kind { get; } =
        new((LandmarkKind.Point, "point"), (LandmarkKind.Contour, "contour"));

    /// <summary>Who laid a landmark.</summary>
    public static Vocabulary<LandmarkSource> Source { get; } =
        new((LandmarkSource.Model, "model"), (LandmarkSource.Reader, "reader"));

    /// <summary>State of a measurement.</summary>
    public static Vocabulary<MeasurementState> State { get; } = new(
        (MeasurementState.Measured, "measured"),
        (MeasurementState.EitherSide, "either-side"),
        (MeasurementState.Withheld, "withheld"));

    /// <summary>State of evidence.</summary>
    public static Vocabulary<EvidenceState> Evidence { get; } =
        new((EvidenceState.LookHere, "look-here"), (EvidenceState.NotAssessable, "not-assessable"));
}
