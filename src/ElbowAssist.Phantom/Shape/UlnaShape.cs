namespace ElbowAssist.Phantom.Shape;

/// <summary>The proximal ulna; millimetres and degrees.</summary>
public sealed record UlnaShape
{
    /// <summary>Size against a bone with a trochlear groove of 8.45 mm radius.</summary>
    public required double Scale { get; init; }

    /// <summary>Gap between the bones in the notch: two layers of cartilage and fluid.</summary>
    public required double JointGap { get; init; }

    /// <summary>Height of the coronoid tip above the floor of the notch.</summary>
    public required double CoronoidHeight { get; init; }

    /// <summary>How far the olecranon reaches behind the flexion axis.</summary>
    public required double OlecranonReach { get; init; }

    /// <summary>Depth of the ulna behind the notch.</summary>
    public required double Thickness { get; init; }

    /// <summary>Half width of the shaft (about 60 and 100 mm down).</summary>
    public required double ShaftRadius { get; init; }

    /// <summary>Lateral tilt of the shaft against the square to the flexion axis, the carrying angle's share.</summary>
    public required double ValgusDegrees { get; init; }

    /// <summary>Dorsal angulation of the shaft, apex about 50 mm down.</summary>
    public required double DorsalAngleDegrees { get; init; }

    /// <summary>Middle of the joint end along the flexion axis.</summary>
    public required double MiddleZ { get; init; }

    /// <summary>Flattening across.</summary>
    public required double Flattening { get; init; }

    /// <summary>Length from notch to wrist.</summary>
    public required double Length { get; init; }

    /// <summary>Cortex of the shaft.</summary>
    public required double CortexShaft { get; init; }

    /// <summary>Cortex at the joint.</summary>
    public required double CortexJoint { get; init; }

    /// <summary>Length of the spur at the coronoid tip, and of that at the back of the olecranon; 0 for none.</summary>
    public double CoronoidSpur { get; init; }

    /// <summary>Length of the spur at the back of the olecranon.</summary>
    public double OlecranonSpur { get; init; }

    /// <summary>Bone volume fraction at the joint.</summary>
    public required double SpongyJoint { get; init; }

    /// <summary>Bone volume fraction in the shaft.</summary>
    public required double SpongyShaft { get; init; }
}
