using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Measurements;

namespace ElbowAssist.Reading.Assembly;

/// <summary>
/// Which evidence this film can show. It depends on flexion, view and cover alone, never on whether a fat pad was found:
/// "look here" must not mean "present".
/// </summary>
internal static class EvidenceAssembly
{
    private static readonly string[] FatPads = ["fat-pad.anterior", "fat-pad.posterior"];
    private static readonly FilmCondition[] Needed =
        [FilmCondition.TrueView, FilmCondition.FlexedNearRightAngle, FilmCondition.SoftTissueUncovered];

    /// <summary>Evidence of the view with, for what cannot be assessed, the reason codes.</summary>
    public static IReadOnlyList<(Evidence Evidence, IReadOnlyList<string> Reasons)> Of(
        ReadingInput input, FilmFacts facts, IReadOnlyList<string> everywhere)
    {
        if (input.View.Name != View.Lateral)
        {
            return [];
        }

        IReadOnlyList<string> reasons = [.. Needed.Select(facts.Unmet).OfType<string>().Concat(everywhere).Distinct(StringComparer.Ordinal)];
        return [.. FatPads.Select(name => reasons.Count == 0
            ? (new Evidence(name, EvidenceState.LookHere, input.EvidenceFigures.GetValueOrDefault(name)), reasons)
            : (new Evidence(name, EvidenceState.NotAssessable, null), reasons))];
    }
}
