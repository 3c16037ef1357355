namespace ElbowAssist.Phantom.Exposure.Settings;

/// <summary>How well made the simulated films are.</summary>
public enum Adequacy
{
    /// <summary>Well exposed and processed, the elbow wholly in the field.</summary>
    Good,

    /// <summary>As films come: mostly good, some not.</summary>
    Mixed,

    /// <summary>Each film has at least one fault of exposure, processing or field.</summary>
    Poor,
}
