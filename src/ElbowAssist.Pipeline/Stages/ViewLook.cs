using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Imaging.Normalisation;
using ElbowAssist.Pipeline.Proposals;

namespace ElbowAssist.Pipeline.Stages;

/// <summary>What the view passes found.</summary>
/// <param name="Film">The film in the polarity that was taken.</param>
/// <param name="Proposal">Probabilities and view error.</param>
/// <param name="Locator">Locator points in film pixels, median of the passes.</param>
internal sealed record ViewLook(NormalisedFilm Film, ViewProposal Proposal, LocatorPoints Locator);
