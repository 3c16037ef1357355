using ElbowAssist.Phantom.Growth;

namespace ElbowAssist.Phantom.Shape;

/// <summary>One elbow: sizes, shapes and densities of every part.</summary>
/// <param name="Humerus">Distal humerus.</param>
/// <param name="Ulna">Proximal ulna.</param>
/// <param name="Radius">Proximal radius.</param>
/// <param name="Soft">Soft tissue.</param>
public sealed record ElbowShape(HumerusShape Humerus, UlnaShape Ulna, RadiusShape Radius, SoftTissueShape Soft)
{
    /// <summary>State of growth; null once every physis is closed.</summary>
    public GrowthState? Growth { get; init; }
}
