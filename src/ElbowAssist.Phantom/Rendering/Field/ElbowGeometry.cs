namespace ElbowAssist.Phantom.Rendering.Field;

/// <summary>Everything that a ray needs to know about one elbow on one film. No references, so that it can live on a GPU.</summary>
internal struct ElbowGeometry
{
    public HumerusGeometry Humerus;
    public UlnaGeometry Ulna;
    public RadiusGeometry Radius;
    public SoftTissueGeometry Soft;
    public MetalGeometry Metal;
    public CameraGeometry Camera;

    /// <summary>1 if there is any metal.</summary>
    public int HasMetal;

    /// <summary>1 for bones without shell and marrow.</summary>
    public int SolidBones;
    public uint NoiseSeed;
}

/// <summary>A point source and the plane of the pixels through the elbow, in the frame of the humerus.</summary>
internal struct CameraGeometry
{
    public Vec3 Source;

    /// <summary>Top-left corner of the film in that plane, and the steps from pixel to pixel along rows and columns.</summary>
    public Vec3 Corner, StepX, StepY;

    /// <summary>How far before and behind the plane the limb may reach.</summary>
    public float HalfDepth;
}
