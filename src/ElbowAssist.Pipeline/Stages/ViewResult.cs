using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Imaging.Normalisation;
using ElbowAssist.Reading;

namespace ElbowAssist.Pipeline.Stages;

/// <summary>What the view passes found.</summary>
/// <param name="Film">The film in the polarity that was taken.</param>
/// <param name="Finding">View, probabilities and view error.</param>
/// <param name="Locator">Locator points in film pixels, median of the passes.</param>
/// <param name="Checks">Checks made.</param>
internal sealed record ViewResult(
    NormalisedFilm Film, ViewFinding Finding, LocatorPoints Locator, IReadOnlyList<AdequacyCheck> Checks);
