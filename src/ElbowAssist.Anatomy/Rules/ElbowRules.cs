namespace ElbowAssist.Anatomy.Rules;

/// <summary>All rules in one call.</summary>
public static class ElbowRules
{
    /// <summary>Prompts a reader sees at one time, at most.</summary>
    public const int VisibleAtOnce = 3;

    /// <summary>
    /// Every prompt that applies, the most urgent first; each code once. The other side is never asked for.
    /// </summary>
    public static IReadOnlyList<RulePrompt> Evaluate(RuleInput input)
    {
        ArgumentNullException.ThrowIfNull(input);
        return Ordered(
        [
            .. TimeCriticalRule.Apply(input),
            .. PhysealSeparationRule.Apply(input),
            .. EffusionRule.Apply(input),
            .. AnteriorHumeralLineRule.Apply(input),
            .. RadiocapitellarRule.Apply(input),
            .. Growth.GrowthRule.Apply(input),
            .. AssociatedInjuryTable.Apply(input),
            .. LimitRule.Apply(input),
            .. ContextRule.Apply(input),
        ]);
    }

    /// <summary>Prompts of several films of one study in one list: each code once, the most urgent first.</summary>
    public static IReadOnlyList<RulePrompt> Ordered(IEnumerable<RulePrompt> prompts) =>
        [.. prompts.DistinctBy(p => p.Code).OrderBy(p => p.Urgency)];

    /// <summary>The prompts to show now: the first of those the reader has not settled, at most <see cref="VisibleAtOnce"/>.</summary>
    public static IReadOnlyList<RulePrompt> Visible(IReadOnlyList<RulePrompt> prompts, IReadOnlySet<string> settledCodes) =>
        [.. prompts.Where(p => !settledCodes.Contains(p.Code)).Take(VisibleAtOnce)];
}
