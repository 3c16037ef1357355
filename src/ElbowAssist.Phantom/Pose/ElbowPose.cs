namespace ElbowAssist.Phantom.Pose;

/// <summary>How the elbow lies in the beam, and the beam.</summary>
public sealed record ElbowPose
{
    /// <summary>Flexion, 0 = straight.</summary>
    public required double FlexionDegrees { get; init; }

    /// <summary>Rotation of the forearm, 0 = supinated, about 80 = neutral, about 160 = pronated.</summary>
    public required double ForearmRotationDegrees { get; init; }

    /// <summary>Turn of the humerus about its shaft away from the true view; for an oblique view about ±45.</summary>
    public required double AxialRotationDegrees { get; init; }

    /// <summary>Tilt of the shaft out of the plane of the film.</summary>
    public required double TiltDegrees { get; init; }

    /// <summary>True if the beam enters from the far side (from medial, or from behind).</summary>
    public required bool FromBehind { get; init; }

    /// <summary>Distance from source to detector.</summary>
    public required double SourceDetectorMillimetres { get; init; }

    /// <summary>Distance from the joint to the detector.</summary>
    public required double ObjectDetectorMillimetres { get; init; }

    /// <summary>Where the central ray passes the joint, along the film's axes.</summary>
    public required double CentralRayX { get; init; }

    /// <summary>Where the central ray passes the joint, along the film's axes.</summary>
    public required double CentralRayY { get; init; }

    /// <summary>The straight, supinated elbow before an ordinary beam.</summary>
    internal static ElbowPose Straight => new()
    {
        FlexionDegrees = 0,
        ForearmRotationDegrees = 0,
        AxialRotationDegrees = 0,
        TiltDegrees = 0,
        FromBehind = false,
        SourceDetectorMillimetres = 1000,
        ObjectDetectorMillimetres = 50,
        CentralRayX = 0,
        CentralRayY = 0,
    };

    /// <summary>The same view in units of an elbow of another size: lengths of the beam are divided by the size.</summary>
    internal ElbowPose SeenBySize(double size) => this with
    {
        SourceDetectorMillimetres = SourceDetectorMillimetres / size,
        ObjectDetectorMillimetres = ObjectDetectorMillimetres / size,
        CentralRayX = CentralRayX / size,
        CentralRayY = CentralRayY / size,
    };
}
