namespace ElbowAssist.Phantom.Pose;

/// <summary>How well simulated films are positioned.</summary>
public enum Adequacy
{
    /// <summary>Close to the true view.</summary>
    Good,

    /// <summary>As films come.</summary>
    Mixed,

    /// <summary>Far from the true view.</summary>
    Poor,
}
