namespace ElbowAssist.Phantom.Rendering.Field;

/// <summary>Path lengths of one ray, millimetres.</summary>
internal struct RayPaths
{
    public float Soft, Fat, Bone, Metal, Cast;

    /// <summary>Path through each bone, shell and inside together.</summary>
    public float Humerus, Ulna, Radius;

    public readonly byte Labels => (byte)((Humerus > 0.8f ? 1 : 0) | (Ulna > 0.8f ? 2 : 0) | (Radius > 0.8f ? 4 : 0));
}
