using ElbowAssist.Geometry;

namespace ElbowAssist.Models;

/// <summary>What one pass of a landmark model proposes for one landmark, in pixels of the input crop.</summary>
/// <param name="Position">Place; NaN if the network gave none.</param>
/// <param name="Spread">Covariance the network states, or that of its heatmap, or null.</param>
/// <param name="Visibility">Probability that the landmark can be seen; 1 if the network does not say.</param>
/// <param name="Share">Share of the heatmap around the place; 1 for networks that give points.</param>
/// <param name="Second">The second highest place of the heatmap, or null.</param>
/// <param name="SecondShare">Share of the heatmap around the second place.</param>
public readonly record struct Proposal(
    Point Position, Covariance? Spread, double Visibility, double Share, Point? Second, double SecondShare);

/// <summary>Estimated rotation away from the true view.</summary>
/// <param name="Degrees">Mean, degrees.</param>
/// <param name="StandardDeviation">Standard deviation, degrees.</param>
public readonly record struct ViewError(double Degrees, double StandardDeviation);

/// <summary>One pass of a landmark model.</summary>
/// <param name="Proposals">By landmark, in the order of the model's <see cref="LandmarkModel.Landmarks"/>.</param>
/// <param name="ViewError">View error, or null if the network does not estimate it.</param>
/// <param name="Features">Pooled features; empty if the network gives none.</param>
public sealed record LandmarkPass(IReadOnlyList<Proposal> Proposals, ViewError? ViewError, IReadOnlyList<float> Features);
