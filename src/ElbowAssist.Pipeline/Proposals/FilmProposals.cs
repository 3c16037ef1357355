using System.Collections.ObjectModel;
using ElbowAssist.Anatomy;
using ElbowAssist.Geometry;
using ElbowAssist.Models.Merging;
using ElbowAssist.Reading;

namespace ElbowAssist.Pipeline.Proposals;

/// <summary>
/// What image and networks say of a film before any limit is applied and before any calibration: from it a reading
/// follows, and follows anew when limits or calibration change, without running a network again.
/// </summary>
public sealed record FilmProposals
{
    /// <summary>Image figures by limit name.</summary>
    public required IReadOnlyDictionary<string, double> Image { get; init; }

    /// <summary>What the view model says, or null if it was not asked.</summary>
    public ViewProposal? View { get; init; }

    /// <summary>What a landmark model proposes, or null if none was asked or the elbow was not located.</summary>
    public LandmarkProposals? Landmarks { get; init; }
}

/// <summary>What the view passes say together.</summary>
/// <param name="Model">The view model.</param>
/// <param name="Probabilities">Mean probability by class.</param>
/// <param name="ErrorDegrees">Rotation away from the true view in degrees, or null if not estimated.</param>
public sealed record ViewProposal(ModelIdentity Model, IReadOnlyDictionary<string, double> Probabilities, double? ErrorDegrees);

/// <summary>What the landmark passes say together.</summary>
/// <param name="Model">The landmark model.</param>
/// <param name="View">View of the model.</param>
/// <param name="FilmToCrop">The canonical pose in which the elbow was looked at.</param>
/// <param name="ErrorDegrees">Rotation away from the true view in degrees, or null if not estimated.</param>
/// <param name="Landmarks">Merged landmarks in film pixels.</param>
/// <param name="PassJoint">
/// Joint covariance of <paramref name="Landmarks"/> over the passes in squared film pixels, or null where it was not kept;
/// a calibrated model does not need it.
/// </param>
/// <param name="Features">Pooled features, mean of the passes; empty if the network gives none.</param>
public sealed record LandmarkProposals(
    ModelIdentity Model,
    View View,
    Similarity FilmToCrop,
    double? ErrorDegrees,
    IReadOnlyList<MergedProposal> Landmarks,
    ElbowAssist.Geometry.Spread.JointCovariance? PassJoint,
    IReadOnlyList<double> Features)
{
    /// <summary>How the bone about the landmarks is exposed, by limit name without its view; empty where it was not looked at.</summary>
    public IReadOnlyDictionary<string, double> Exposure { get; init; } = ReadOnlyDictionary<string, double>.Empty;
}
