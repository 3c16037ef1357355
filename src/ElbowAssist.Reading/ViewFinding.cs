using ElbowAssist.Anatomy;

namespace ElbowAssist.Reading;

/// <summary>What the film shows.</summary>
/// <param name="Name">The view taken for the measurements.</param>
/// <param name="Probabilities">Probability by class of the view model; empty if the view was stated, not recognised.</param>
/// <param name="ErrorDegrees">Estimated rotation away from the true view, or null if not estimated.</param>
public sealed record ViewFinding(View Name, IReadOnlyDictionary<string, double> Probabilities, double? ErrorDegrees);
