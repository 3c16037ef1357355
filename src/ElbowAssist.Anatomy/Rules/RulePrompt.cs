namespace ElbowAssist.Anatomy.Rules;

/// <summary>How soon a prompt should be seen; the order in which prompts take the few visible places.</summary>
public enum Urgency
{
    /// <summary>Harm may come within hours.</summary>
    TimeCritical,

    /// <summary>Something to settle before the read is closed.</summary>
    Strong,

    /// <summary>A second look is worth while.</summary>
    Soft,

    /// <summary>Counts little; good to know.</summary>
    Information,
}

/// <summary>What a rule asks the reader to think of; never a finding, never an instruction.</summary>
/// <param name="Code">Stable code.</param>
/// <param name="Text">A sentence or two for the reader.</param>
/// <param name="Source">Citations, all of them where sources contradict each other.</param>
/// <param name="Urgency">Place in the order.</param>
public sealed record RulePrompt(string Code, string Text, string Source, Urgency Urgency);
