namespace ElbowAssist.Anatomy;

/// <summary>The projection of a radiograph.</summary>
public enum View
{
    /// <summary>Not recognised.</summary>
    Unknown,

    /// <summary>Lateral.</summary>
    Lateral,

    /// <summary>Antero-posterior.</summary>
    Ap,

    /// <summary>Internal or external oblique.</summary>
    Oblique,
}
