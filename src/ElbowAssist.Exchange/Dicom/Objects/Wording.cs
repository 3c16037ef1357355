namespace ElbowAssist.Exchange.Dicom.Objects;

/// <summary>Words on every label of a report or presentation state.</summary>
internal static class Wording
{
    /// <summary>What every label says first.</summary>
    public const string Proposal = "Proposal, second look";

    /// <summary>A label.</summary>
    public static string Label(string what) => $"{Proposal}: {what}";
}
