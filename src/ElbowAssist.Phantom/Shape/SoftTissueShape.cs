namespace ElbowAssist.Phantom.Shape;

/// <summary>Soft tissue, fat pads and a cast; millimetres.</summary>
public sealed record SoftTissueShape
{
    /// <summary>Radius of the upper arm at the joint and 150 mm up.</summary>
    public required double ArmRadiusJoint { get; init; }

    /// <summary>Radius of the upper arm 150 mm above the joint.</summary>
    public required double ArmRadiusUpper { get; init; }

    /// <summary>Radius of the forearm at its thickest.</summary>
    public required double ForearmRadius { get; init; }

    /// <summary>Radius of the forearm near the wrist.</summary>
    public required double WristRadius { get; init; }

    /// <summary>Scale across the limb; above 1 is narrower side to side.</summary>
    public required double Flattening { get; init; }

    /// <summary>Skin thickness.</summary>
    public required double Skin { get; init; }

    /// <summary>Fat layer under the skin.</summary>
    public required double FatLayer { get; init; }

    /// <summary>Share of fat in the planes between muscles.</summary>
    public required double Marbling { get; init; }

    /// <summary>Soft tissue over the back of the olecranon.</summary>
    public required double OlecranonCover { get; init; }

    /// <summary>Lift of the anterior fat pad's free end from the cortex.</summary>
    public required double AnteriorPadLift { get; init; }

    /// <summary>How far the posterior fat pad stands out of its fossa; 0 or less is hidden.</summary>
    public required double PosteriorPadLift { get; init; }

    /// <summary>Thickness and length of the anterior fat pad.</summary>
    public required double AnteriorPadThickness { get; init; }

    /// <summary>Length of the anterior fat pad.</summary>
    public required double AnteriorPadLength { get; init; }

    /// <summary>Cast thickness, 0 for none.</summary>
    public required double CastThickness { get; init; }

    /// <summary>Padding under the cast.</summary>
    public required double CastPadding { get; init; }

    /// <summary>True for a slab on one side, false for a full cast.</summary>
    public required bool CastIsSlab { get; init; }

    /// <summary>Relative density variation of the knit.</summary>
    public required double CastMesh { get; init; }
}
