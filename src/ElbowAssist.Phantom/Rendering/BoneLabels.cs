namespace ElbowAssist.Phantom.Rendering;

/// <summary>Which bones a ray passes through.</summary>
[Flags]
public enum BoneLabels
{
    /// <summary>No bone.</summary>
    None = 0,

    /// <summary>Humerus with its ossification centres.</summary>
    Humerus = 1,

    /// <summary>Ulna with its ossification centres.</summary>
    Ulna = 2,

    /// <summary>Radius with its ossification centre.</summary>
    Radius = 4,
}
