using ElbowAssist.Geometry;

namespace ElbowAssist.Models;

/// <summary>One locator point in pixels of the input.</summary>
/// <param name="Position">Place.</param>
/// <param name="Share">Share of the heatmap around it.</param>
/// <param name="Spread">Covariance of the heatmap around it.</param>
public readonly record struct LocatedPoint(Point Position, double Share, Covariance Spread);

/// <summary>One pass of a view model.</summary>
/// <param name="Probabilities">Probability by class name.</param>
/// <param name="Shaft">On the humeral shaft axis.</param>
/// <param name="Joint">Centre of the joint.</param>
/// <param name="Forearm">Between radius and ulna.</param>
/// <param name="Mark">Olecranon or medial epicondyle.</param>
/// <param name="ViewError">View error, or null if the network does not estimate it.</param>
public sealed record ViewPass(
    IReadOnlyDictionary<string, double> Probabilities,
    LocatedPoint Shaft,
    LocatedPoint Joint,
    LocatedPoint Forearm,
    LocatedPoint Mark,
    ViewError? ViewError);
