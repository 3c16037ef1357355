namespace ElbowAssist.Reading;

/// <summary>Something the rules ask the reader to think of.</summary>
/// <param name="Code">Stable code.</param>
/// <param name="Text">A sentence for the reader.</param>
/// <param name="Source">Publication behind it.</param>
public sealed record Prompt(string Code, string Text, string Source);

/// <summary>Why something was refused or withheld.</summary>
/// <param name="Code">Stable code.</param>
/// <param name="Text">A sentence a reader understands.</param>
public sealed record Reason(string Code, string Text);
