namespace ElbowAssist.Phantom.Shape;

/// <summary>
/// The distal humerus. Frame: origin in the middle of the flexion axis, X anterior, Y proximal along the shaft,
/// Z lateral; millimetres, radii and half widths of bone without cartilage.
/// </summary>
public sealed record HumerusShape
{
    /// <summary>Distance between the tips of the epicondyles; sets the size of what is not given on its own.</summary>
    public required double EpicondylarWidth { get; init; }

    /// <summary>Sagittal radius of the capitellum.</summary>
    public required double CapitellumRadius { get; init; }

    /// <summary>Radius of the capitellum along the flexion axis.</summary>
    public required double CapitellumTransverseRadius { get; init; }

    /// <summary>Place of the capitellar centre along the flexion axis, and its offset from the axis (X, Y).</summary>
    public required double CapitellumZ { get; init; }

    /// <summary>Capitellar centre in front of the flexion axis.</summary>
    public required double CapitellumX { get; init; }

    /// <summary>Capitellar centre above the flexion axis.</summary>
    public required double CapitellumY { get; init; }

    /// <summary>Radius of the medial trochlear lip.</summary>
    public required double MedialLipRadius { get; init; }

    /// <summary>Radius of the trochlear groove.</summary>
    public required double GrooveRadius { get; init; }

    /// <summary>Radius of the lateral trochlear lip.</summary>
    public required double LateralLipRadius { get; init; }

    /// <summary>Width of capitellum and trochlea together.</summary>
    public required double ArticularWidth { get; init; }

    /// <summary>Smallest anteroposterior width of the shaft in its distal half (W).</summary>
    public required double WaistAp { get; init; }

    /// <summary>Anteroposterior width of the shaft 100 mm above the joint (adult).</summary>
    public required double ShaftAp { get; init; }

    /// <summary>Anteroposterior width just above the joint.</summary>
    public required double DistalAp { get; init; }

    /// <summary>Mediolateral width of the shaft.</summary>
    public required double ShaftMl { get; init; }

    /// <summary>Mediolateral width 20 mm above the joint (adult).</summary>
    public required double FlareMl { get; init; }

    /// <summary>How far the section moves back from the joint to the shaft.</summary>
    public required double ForwardReach { get; init; }

    /// <summary>
    /// Where a line along the anterior cortex (1 to 2 W above the fossa roof) crosses the capitellum, 0 at its front,
    /// 1 at its back; the shaft is placed to give it.
    /// </summary>
    public required double AnteriorLineShare { get; init; }

    /// <summary>
    /// Angle between the shaft (1 to 3 W above the fossa roof) and the line from the waist of the hourglass through the
    /// capitellar centre, forward positive; the fossae are placed to give it, as far as the bone is deep enough.
    /// </summary>
    public required double CondylarTiltDegrees { get; init; }

    /// <summary>Height of the waist of the hourglass, where the fossae come closest.</summary>
    public required double WaistHeight { get; init; }

    /// <summary>Bow of the shaft above the joint region, 1/mm.</summary>
    public required double Bow { get; init; }

    /// <summary>How far the shaft lies lateral of the joint centre, 100 mm up and at the joint.</summary>
    public required double ShaftZ { get; init; }

    /// <summary>Lateral place of the blade at the joint.</summary>
    public required double DistalZ { get; init; }

    /// <summary>Olecranon fossa: length (along the shaft), width, depth.</summary>
    public required double OlecranonFossaLength { get; init; }

    /// <summary>Width of the olecranon fossa.</summary>
    public required double OlecranonFossaWidth { get; init; }

    /// <summary>Height of the middle of the olecranon fossa.</summary>
    public required double OlecranonFossaHeight { get; init; }

    /// <summary>Length of the coronoid fossa.</summary>
    public required double CoronoidFossaLength { get; init; }

    /// <summary>Width of the coronoid fossa.</summary>
    public required double CoronoidFossaWidth { get; init; }

    /// <summary>Depth of the radial fossa.</summary>
    public required double RadialFossaDepth { get; init; }

    /// <summary>Thickness of the bone between olecranon and coronoid fossa; negative leaves a hole.</summary>
    public required double Septum { get; init; }

    /// <summary>Medial epicondyle: how far medial, behind and above the joint centre its tip lies.</summary>
    public required double MedialEpicondyleReach { get; init; }

    /// <summary>Height of the medial epicondyle.</summary>
    public required double MedialEpicondyleHeight { get; init; }

    /// <summary>Lateral epicondyle: how far lateral of the joint centre its tip lies.</summary>
    public required double LateralEpicondyleReach { get; init; }

    /// <summary>Height of the lateral epicondyle.</summary>
    public required double LateralEpicondyleHeight { get; init; }

    /// <summary>Cortex of the shaft 100 mm above the joint (adult), and near the joint.</summary>
    public required double CortexShaft { get; init; }

    /// <summary>Cortex near the joint.</summary>
    public required double CortexDistal { get; init; }

    /// <summary>Wear of the joint, 0 none to 1 much: dense bone under the joint surface.</summary>
    public double Wear { get; init; }

    /// <summary>Bone volume fraction near the joint.</summary>
    public required double SpongyDistal { get; init; }

    /// <summary>Bone volume fraction inside the shaft.</summary>
    public required double SpongyShaft { get; init; }
}
