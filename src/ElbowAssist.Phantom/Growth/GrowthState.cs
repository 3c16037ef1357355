namespace ElbowAssist.Phantom.Growth;

/// <summary>Ossification of a growing elbow; millimetres, angles in degrees, shares without unit.</summary>
public sealed record GrowthState
{
    /// <summary>Diameter of the cartilaginous capitellum.</summary>
    public required double CartilageDiameter { get; init; }

    /// <summary>Forward tilt of the capitellar physis, 90 less the angle to the shaft.</summary>
    public required double PhysisTiltDegrees { get; init; }

    /// <summary>Rise of the lateral condylar physis towards lateral, 90 less Baumann's angle.</summary>
    public required double PhysisSlopeDegrees { get; init; }

    /// <summary>Rise of the trochlear part of the physis towards lateral.</summary>
    public required double MedialSlopeDegrees { get; init; }

    /// <summary>Width of the physis of the joint block.</summary>
    public required double PhysisGap { get; init; }

    /// <summary>True once capitellum, trochlea and lateral epicondyle are one bone.</summary>
    public required bool Composite { get; init; }

    /// <summary>True once that bone has joined the shaft.</summary>
    public required bool JointBlockFused { get; init; }

    /// <summary>Capitellar nucleus: anteroposterior diameter; 0 before it appears.</summary>
    public required double CapitellumDiameter { get; init; }

    /// <summary>Height of the capitellar nucleus along the axis of the epiphysis.</summary>
    public required double CapitellumHeight { get; init; }

    /// <summary>Mediolateral width of the capitellar nucleus.</summary>
    public required double CapitellumWidth { get; init; }

    /// <summary>Nucleus in front of the middle of the cartilage.</summary>
    public required double CapitellumForward { get; init; }

    /// <summary>Nucleus medial of the middle of the cartilage.</summary>
    public required double CapitellumMedial { get; init; }

    /// <summary>0 a ball, 1 a half ball with its flat side to the physis.</summary>
    public required double CapitellumFlatness { get; init; }

    /// <summary>Size of the trochlear nuclei as a share of their final size; 0 before they appear.</summary>
    public required double Trochlea { get; init; }

    /// <summary>Size of the medial epicondylar nucleus as a share; 0 before it appears.</summary>
    public required double MedialEpicondyle { get; init; }

    /// <summary>True once the medial epicondyle has joined the shaft.</summary>
    public required bool MedialEpicondyleFused { get; init; }

    /// <summary>Size of the lateral epicondylar nucleus as a share; 0 before it appears or once joined.</summary>
    public required double LateralEpicondyle { get; init; }

    /// <summary>Width of the radial head's disc over the breadth of the metaphysis; 0 before it appears.</summary>
    public required double RadialHeadShare { get; init; }

    /// <summary>Thickness of that disc.</summary>
    public required double RadialHeadThickness { get; init; }

    /// <summary>Width of the physis of the radial head.</summary>
    public required double RadialPhysisGap { get; init; }

    /// <summary>Height of the cartilaginous radial head above the metaphysis.</summary>
    public required double RadialHeadHeight { get; init; }

    /// <summary>True once the radial head has joined.</summary>
    public required bool RadialHeadFused { get; init; }

    /// <summary>How far the bone of the ulna ends short of the olecranon tip.</summary>
    public required double OlecranonCap { get; init; }

    /// <summary>Size of the olecranon nucleus as a share; 0 before it appears.</summary>
    public required double Olecranon { get; init; }

    /// <summary>True if the olecranon has two nuclei.</summary>
    public required bool OlecranonSplit { get; init; }

    /// <summary>True once the olecranon has joined.</summary>
    public required bool OlecranonFused { get; init; }
}
