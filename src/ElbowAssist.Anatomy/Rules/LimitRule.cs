namespace ElbowAssist.Anatomy.Rules;

/// <summary>Measurements that are held against one published limit in one setting.</summary>
internal static class LimitRule
{
    /// <summary>Published limit in millimetres of the ulnohumeral gap after a reduction, reached counts (Coonrad 2005).</summary>
    public const double GapMm = 4;

    /// <summary>Published window of the radiocapitellar ratio, adolescents and adults (Rouleau 2012).</summary>
    public const double RatioLow = -0.05;

    /// <summary>Upper end of the window.</summary>
    public const double RatioHigh = 0.13;

    public static IEnumerable<RulePrompt> Apply(RuleInput input)
    {
        if (input is { View: View.Lateral, Context: FilmContext.AfterReduction, Maturity: Maturity.Adult } &&
            input.Find("ulnohumeral-gap") is { Value: >= GapMm })
        {
            yield return new(
                "ulnohumeral-gap.limit",
                "The ulnohumeral gap reaches 4 mm after the reduction (drop sign). It counts if it persists; compare with a later film.",
                Publications.Coonrad.Citation,
                Urgency.Strong);
        }

        if (input is { View: View.Lateral, Maturity: Maturity.Adolescent or Maturity.Adult } &&
            input.Find("radiocapitellar-ratio") is { } ratio &&
            (ratio.LowOrValue > RatioHigh || ratio.HighOrValue < RatioLow))
        {
            yield return new(
                "radiocapitellar-ratio.window",
                "The radiocapitellar ratio lies outside the published window of -5 to +13 % of 40 healthy elbows. Two readers agreed only moderately (0.52). Look at the radial head on every view.",
                Publications.Rouleau.Citation,
                Urgency.Soft);
        }
    }
}
