using ElbowAssist.Anatomy;
using ElbowAssist.Phantom.Injury;
using ElbowAssist.Phantom.Mesh.Rendering;
using ElbowAssist.Phantom.Shape;

namespace ElbowAssist.Phantom;

/// <summary>One simulated patient's elbow.</summary>
/// <param name="Seed">The seed that fixes it.</param>
/// <param name="AgeMonths">Age in completed months.</param>
/// <param name="Sex">Sex.</param>
/// <param name="Side">Side.</param>
/// <param name="Shape">Sizes, shapes and densities.</param>
public sealed record ElbowCase(ulong Seed, int AgeMonths, Sex Sex, Side Side, ElbowShape Shape)
{
    /// <summary>The injury, or null.</summary>
    public ElbowInjury? Injury { get; init; }

    /// <summary>Metal left by treatment.</summary>
    public Fixation Fixation { get; init; }

    /// <summary>Surfaces of whole, grown bones that stand in for the parametric ones, registered to the shape; or null.</summary>
    internal MeshBones? Meshes { get; init; }

    /// <summary>
    /// Size against the shape, for elbows that are enlarged or reduced as a whole: the rays of an elbow twice as large
    /// are those of the shape seen from half as far, each path twice as long.
    /// </summary>
    internal double Size { get; init; } = 1;

    /// <summary>Codes of the injuries; empty if there are none.</summary>
    public IReadOnlyList<string> Injuries => Injury is { } injury ? [injury.Code] : [];
}
