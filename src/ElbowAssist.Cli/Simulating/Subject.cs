namespace ElbowAssist.Cli.Simulating;

/// <summary>What <c>simulate</c> shows.</summary>
internal enum Subject
{
    /// <summary>Elbows.</summary>
    Elbow,

    /// <summary>Films of other body regions, and of an arm with the elbow off the film.</summary>
    NearMiss,

    /// <summary>Photographs, drawings, text pages, noise and the like.</summary>
    NotRadiograph,
}
