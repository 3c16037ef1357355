namespace ElbowAssist.Phantom.Shape;

/// <summary>The proximal radius; millimetres and degrees.</summary>
public sealed record RadiusShape
{
    /// <summary>Long diameter of the head.</summary>
    public required double HeadDiameter { get; init; }

    /// <summary>Short over long diameter of the head.</summary>
    public required double HeadRoundness { get; init; }

    /// <summary>Height of the head.</summary>
    public required double HeadHeight { get; init; }

    /// <summary>Share by which the head narrows towards the neck.</summary>
    public required double HeadTaper { get; init; }

    /// <summary>Rounding of the rim.</summary>
    public required double HeadRounding { get; init; }

    /// <summary>Depth of the dish.</summary>
    public required double DishDepth { get; init; }

    /// <summary>Gap between capitellum and dish.</summary>
    public required double JointGap { get; init; }

    /// <summary>Outer diameter of the neck.</summary>
    public required double NeckDiameter { get; init; }

    /// <summary>Head surface to the middle of the tuberosity.</summary>
    public required double TuberosityDistance { get; init; }

    /// <summary>How far the tuberosity stands out.</summary>
    public required double TuberosityHeight { get; init; }

    /// <summary>Diameter of the shaft.</summary>
    public required double ShaftDiameter { get; init; }

    /// <summary>Angle between neck and shaft.</summary>
    public required double NeckShaftDegrees { get; init; }

    /// <summary>How far the head's axis passes in front of the middle of the capitellum.</summary>
    public required double HeadForward { get; init; }

    /// <summary>How far the head's axis passes lateral of the middle of the capitellum.</summary>
    public required double HeadLateral { get; init; }

    /// <summary>Length.</summary>
    public required double Length { get; init; }

    /// <summary>Cortex of the shaft.</summary>
    public required double CortexShaft { get; init; }

    /// <summary>Cortex at the head.</summary>
    public required double CortexJoint { get; init; }

    /// <summary>Bone volume fraction in the head.</summary>
    public required double SpongyJoint { get; init; }

    /// <summary>Bone volume fraction in the shaft.</summary>
    public required double SpongyShaft { get; init; }
}
