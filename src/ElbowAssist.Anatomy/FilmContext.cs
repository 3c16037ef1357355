namespace ElbowAssist.Anatomy;

/// <summary>Why and when the film was taken.</summary>
public enum FilmContext
{
    /// <summary>Not stated.</summary>
    Unknown,

    /// <summary>After an acute injury, before treatment.</summary>
    Acute,

    /// <summary>After a reduction.</summary>
    AfterReduction,

    /// <summary>In a cast or splint.</summary>
    Cast,

    /// <summary>With metal in place.</summary>
    Fixation,

    /// <summary>Later check.</summary>
    FollowUp,
}
