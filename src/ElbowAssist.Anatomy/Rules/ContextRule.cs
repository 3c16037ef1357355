namespace ElbowAssist.Anatomy.Rules;

/// <summary>What treatment puts out of reach of a film.</summary>
internal static class ContextRule
{
    public static IEnumerable<RulePrompt> Apply(RuleInput input)
    {
        var text = input.Context switch
        {
            FilmContext.AfterReduction => "Film after a reduction: nothing here judges a position as restored. Name every cortex that cannot be traced.",
            FilmContext.Cast => "Film in a cast or splint: name every cortex that cannot be traced through it. Nothing here judges a position as restored.",
            FilmContext.Fixation => "Metal in place: name every cortex that it hides. Nothing here judges a position as restored.",
            _ => null,
        };
        if (text is not null)
        {
            yield return new("context.treated", text, Publications.LocalProtocol.Citation, Urgency.Information);
        }

        if (input.Maturity == Maturity.Unknown)
        {
            yield return new(
                "context.age-unknown",
                "Age unknown: say whether this is an adult's or a child's elbow. No rule by age was applied.",
                Publications.ThisProject.Citation,
                Urgency.Information);
        }
    }
}
