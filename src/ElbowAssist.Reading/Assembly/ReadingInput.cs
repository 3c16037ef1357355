using System.Collections.ObjectModel;
using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Anatomy.Measurements;
using ElbowAssist.Anatomy.Rules;
using ElbowAssist.Geometry.Spread;

namespace ElbowAssist.Reading.Assembly;

/// <summary>Everything a reading is assembled from.</summary>
public sealed record ReadingInput
{
    /// <summary>The program that makes the reading.</summary>
    public required ToolIdentity Tool { get; init; }

    /// <summary>The film; lengths are measured only where both spacings are known.</summary>
    public required ImageFacts Image { get; init; }

    /// <summary>View and its certainty.</summary>
    public required ViewFinding View { get; init; }

    /// <summary>Side of the body.</summary>
    public Side Side { get; init; }

    /// <summary>Age and sex.</summary>
    public Patient Patient { get; init; } = Patient.Unknown;

    /// <summary>Why the film was taken.</summary>
    public FilmContext Context { get; init; }

    /// <summary>
    /// Landmarks by a model, by a reader or mixed, in any order; those of the view that are missing count as not visible,
    /// those of other views are left out. Pixels of the original image.
    /// </summary>
    public IReadOnlyList<Landmark> Landmarks { get; init; } = [];

    /// <summary>
    /// Joint covariance in squared pixels, in the order of the view's <see cref="LandmarkSet"/>; null if only each
    /// landmark's own covariance is known. It holds for landmarks of a model; a reader's landmarks err on their own.
    /// </summary>
    public JointCovariance? Spread { get; init; }

    /// <summary>
    /// Landmarks that must not be used, whatever their visibility: passes disagree on them, metal or a cast lies across them.
    /// </summary>
    public IReadOnlyList<UnusableLandmark> Unusable { get; init; } = [];

    /// <summary>Checks already made on image and view. A failed one whose reason refuses films refuses the film.</summary>
    public IReadOnlyList<AdequacyCheck> Checks { get; init; } = [];

    /// <summary>What the reader has said about the film.</summary>
    public ReaderStatements Statements { get; init; } = new();

    /// <summary>What the reader has marked, for the rules.</summary>
    public ReaderMarks Marks { get; init; } = ReaderMarks.None;

    /// <summary>The models that proposed.</summary>
    public IReadOnlyList<ModelIdentity> Models { get; init; } = [];

    /// <summary>
    /// Factor by measurement name that stretches intervals, from the models' conformal calibration on simulated films.
    /// Ignored where every landmark is a reader's.
    /// </summary>
    public IReadOnlyDictionary<string, double> Calibration { get; init; } = ReadOnlyDictionary<string, double>.Empty;

    /// <summary>Correction of zone probabilities by measurement name, from the same calibration; ignored likewise.</summary>
    public IReadOnlyDictionary<string, ZoneCorrection> ZoneCorrections { get; init; } = ReadOnlyDictionary<string, ZoneCorrection>.Empty;

    /// <summary>Name of the picture or profile of each piece of evidence, where one was made.</summary>
    public IReadOnlyDictionary<string, string> EvidenceFigures { get; init; } = ReadOnlyDictionary<string, string>.Empty;

    /// <summary>Milliseconds of the stages before this one.</summary>
    public IReadOnlyDictionary<string, double> Timing { get; init; } = ReadOnlyDictionary<string, double>.Empty;
}

/// <summary>What only a reader can say about a film.</summary>
/// <param name="FullExtensionAndSupination">The elbow was in full extension and supination.</param>
/// <param name="HumerusFlatToDetector">Whether the humerus lay flat to the detector, or null if not said.</param>
/// <param name="ForearmFilm">The film shows the whole forearm.</param>
/// <param name="Maturity">Adult or child, used only where the age is unknown.</param>
public sealed record ReaderStatements(
    bool FullExtensionAndSupination = false,
    bool? HumerusFlatToDetector = null,
    bool ForearmFilm = false,
    Maturity Maturity = Maturity.Unknown);

/// <summary>A landmark that must not be used.</summary>
/// <param name="Name">Landmark name.</param>
/// <param name="Reason">Reason code.</param>
public sealed record UnusableLandmark(string Name, string Reason);
