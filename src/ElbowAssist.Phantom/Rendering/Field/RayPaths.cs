namespace ElbowAssist.Phantom.Rendering.Field;

/// <summary>Path lengths of one ray, millimetres.</summary>
internal struct RayPaths
{
    public float Soft, Fat, Bone, Metal, Cast;

    /// <summary>Path through each bone, shell and inside together.</summary>
    public float Humerus, Ulna, Radius;

    public readonly byte Labels => (byte)((Humerus > 0.8f ? 1 : 0) | (Ulna > 0.8f ? 2 : 0) | (Radius > 0.8f ? 4 : 0));

    /// <summary>Turns some of the muscle into fat, at most all of it.</summary>
    public void TurnToFat(float length)
    {
        var fat = MathF.Min(length, Soft);
        Fat += fat;
        Soft -= fat;
    }
}

/// <summary>Path of one ray through the limb as if it had no bones, millimetres.</summary>
internal struct LimbPath
{
    public float Soft, Fat, Cast;

    /// <summary>Stretch of the ray inside the skin, relative to the plane of the film; empty if To is not beyond From.</summary>
    public float From, To;
}
