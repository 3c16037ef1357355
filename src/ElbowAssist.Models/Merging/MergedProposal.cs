using ElbowAssist.Geometry;

namespace ElbowAssist.Models.Merging;

/// <summary>What all passes together propose for one landmark, in film pixels.</summary>
/// <param name="Name">Landmark name.</param>
/// <param name="Position">Mean of the passes; NaN if none gave a place.</param>
/// <param name="Spread">Mean covariance within plus covariance between passes; null if the model states none and there is one pass.</param>
/// <param name="Visibility">Mean probability of being seen.</param>
/// <param name="Share">Mean share of the heatmaps around the place.</param>
/// <param name="Between">Covariance between passes.</param>
/// <param name="Disagreement">Two places instead of one, or null.</param>
/// <param name="Passes">Numbers of the passes that had a say, from 0.</param>
public sealed record MergedProposal(
    string Name, Point Position, Covariance? Spread, double Visibility, double Share, Covariance Between, TwoPlaces? Disagreement,
    IReadOnlyList<int> Passes);

/// <summary>Two places that passes or heatmap peaks stand for; neither and not their mean may be taken.</summary>
/// <param name="First">The place with more behind it, film pixels.</param>
/// <param name="Second">The other, film pixels.</param>
/// <param name="SecondWeight">Share from 0 to 0.5 behind the second.</param>
public sealed record TwoPlaces(Point First, Point Second, double SecondWeight);
