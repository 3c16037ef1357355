using ElbowAssist.Geometry;

namespace ElbowAssist.Pipeline;

/// <summary>One look at a crop: turned, scaled, mirrored about its middle.</summary>
/// <param name="TurnDegrees">Turn clockwise to the eye.</param>
/// <param name="Scale">Enlargement.</param>
/// <param name="Mirrored">Whether left and right change places.</param>
public readonly record struct CropPass(double TurnDegrees = 0, double Scale = 1, bool Mirrored = false)
{
    /// <summary>From the plain crop to this one; both square with the same side.</summary>
    public Similarity Applied(int side)
    {
        // A similarity mirrors y; a further half turn makes that a mirror of x.
        var turn = (TurnDegrees * Math.PI / 180) + (Mirrored ? Math.PI : 0);
        return Similarity.About(new Point(side / 2.0, side / 2.0), turn, Scale == 0 ? 1 : Scale, Mirrored);
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

    /// <summary>Passes of the landmark model over the canonical crop.</summary>
    public IReadOnlyList<CropPass> Landmarks { get; init; } =
        [new(0, 1), new(0, 1, true), new(9, 0.92), new(-9, 1.08, true), new(-5, 0.96)];
}
