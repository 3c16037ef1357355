using ElbowAssist.Phantom.Rendering.Field;

namespace ElbowAssist.Phantom.Shape;

/// <summary>Named points of one posed elbow, in the frame of the joint, millimetres.</summary>
internal sealed record AnatomicalPoints
{
    /// <summary>W, the smallest outer anteroposterior width of the shaft in its distal half.</summary>
    public required float UnitW { get; init; }

    /// <summary>Where the frame of the humeral shaft lies; the joint moves away from it when the humerus is broken.</summary>
    public required Frame Shaft { get; init; }

    /// <summary>Most proximal point of the olecranon fossa, in the frame of the shaft.</summary>
    public required Vec3 FossaRoof { get; init; }

    /// <summary>Narrowest place between the fossae.</summary>
    public required Vec3 Waist { get; init; }

    public required Vec3 MedialEpicondyle { get; init; }

    public required Vec3 LateralEpicondyle { get; init; }

    public required Vec3 CoronoidTip { get; init; }

    public required Vec3 OlecranonTip { get; init; }

    public required Vec3 AnteriorPadBase { get; init; }

    public required Vec3 AnteriorPadTip { get; init; }

    public required Vec3 PosteriorPadTip { get; init; }

    /// <summary>True if the anterior pad exists, and if the posterior one stands out of its fossa.</summary>
    public required bool AnteriorPadShown { get; init; }

    public required bool PosteriorPadShown { get; init; }
}
