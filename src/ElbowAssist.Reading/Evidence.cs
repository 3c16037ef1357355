namespace ElbowAssist.Reading;

/// <summary>Whether evidence can be looked at.</summary>
public enum EvidenceState
{
    /// <summary>There is a picture or profile to look at.</summary>
    LookHere,

    /// <summary>This film cannot show it.</summary>
    NotAssessable,
}

/// <summary>A place to look at.</summary>
/// <param name="Name">Stable name, e.g. <c>fat-pad.anterior</c>.</param>
/// <param name="State">Whether it can be looked at.</param>
/// <param name="Figure">Name of the picture or profile, or null.</param>
public sealed record Evidence(string Name, EvidenceState State, string? Figure);
