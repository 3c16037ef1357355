using ElbowAssist.Geometry;

namespace ElbowAssist.Pipeline;

/// <summary>Which part of the elbow a pass moves towards the middle of its crop.</summary>
public enum PassAim
{
    /// <summary>The crop stays where the canonical pose puts it.</summary>
    Whole,

    /// <summary>The forearm, whose lower levels end beyond the plain crop.</summary>
    Forearm,
}

/// <summary>One look at a crop: moved, turned, scaled, mirrored about its middle.</summary>
/// <param name="TurnDegrees">Turn clockwise to the eye.</param>
/// <param name="Scale">Enlargement.</param>
/// <param name="Mirrored">Whether left and right change places.</param>
/// <param name="Aim">What moves towards the middle.</param>
public sealed record CropPass(
    double TurnDegrees = 0, double Scale = 1, bool Mirrored = false, PassAim Aim = PassAim.Whole)
{
    /// <summary>How far an aimed pass moves, over the side of the crop; training moved crops by up to 0.12.</summary>
    internal const double Move = 0.12;

    /// <summary>From the plain crop to this one; both square with the same side.</summary>
    /// <param name="side">Side in pixels.</param>
    /// <param name="aim">Direction in which the aimed-at part lies, of length 1, or zero.</param>
    internal Similarity Applied(int side, Vector aim = default)
    {
        // A similarity mirrors y; a further half turn makes that a mirror of x.
        var turn = (TurnDegrees * Math.PI / 180) + (Mirrored ? Math.PI : 0);
        var moved = Similarity.Identity with { Shift = aim * (-Move * side / Scale) };
        return moved.Then(Similarity.About(new Point(side / 2.0, side / 2.0), turn, Scale, Mirrored));
    }
}

/// <summary>Which passes a reading makes.</summary>
public sealed record PassPlan
{
    /// <summary>
    /// Four looks at the whole film by quarter turns and five at the crop in the canonical pose. The number keeps a
    /// reading within half a second on two cores; turns and scales stay inside what the models were trained on.
    /// </summary>
    public static PassPlan Default { get; } = new();

    /// <summary>One look each: fastest, and no spread between passes.</summary>
    public static PassPlan Single { get; } = new() { View = [new CropPass(0, 1)], Landmarks = [new CropPass(0, 1)] };

    /// <summary>Passes of the view model over the whole film.</summary>
    public IReadOnlyList<CropPass> View { get; init; } =
        [new(0, 1), new(90, 1, true), new(180, 1), new(270, 1, true)];

    /// <summary>
    /// Passes of the landmark model over the canonical crop. Two are closer, for a finer look at the joint; one is wider
    /// and moved, so that the lower levels of the forearm come into sight.
    /// </summary>
    public IReadOnlyList<CropPass> Landmarks { get; init; } =
    [
        new(0, 1), new(0, 1, true), new(8, 1.2), new(-8, 1.2, true), new(-5, 0.85, false, PassAim.Forearm),
    ];
}
