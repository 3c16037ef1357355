using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Geometry;
using ElbowAssist.Geometry.Spread;

namespace ElbowAssist.Anatomy.Measurements;

/// <summary>
/// The landmarks of a film as the constructions take them: in the order of the view's set, scaled by the pixel spacing,
/// NaN where a landmark is missing.
/// </summary>
public sealed class LaidLandmarks
{
    private readonly Point[] points;

    private LaidLandmarks(LandmarkSet set, FilmScale scale, Point[] points, JointCovariance? spread)
    {
        Set = set;
        Scale = scale;
        this.points = points;
        Spread = spread;
    }

    /// <summary>The landmark set of the view.</summary>
    public LandmarkSet Set { get; }

    /// <summary>Pixel spacing.</summary>
    public FilmScale Scale { get; }

    /// <summary>Joint covariance of <see cref="Points"/> in scaled units; null for exact landmarks, which all weigh alike.</summary>
    public JointCovariance? Spread { get; }

    /// <summary>Scaled positions, x right and y down; NaN if missing.</summary>
    public ReadOnlySpan<Point> Points => points;

    /// <summary>Exact landmarks without spread: the truth of a simulated film.</summary>
    /// <param name="set">Landmark set of the view.</param>
    /// <param name="pixels">Position of each landmark of the set in pixels of the original image, or null.</param>
    /// <param name="scale">Pixel spacing.</param>
    /// <exception cref="ArgumentException">The number of positions is not that of the set.</exception>
    public static LaidLandmarks Exact(LandmarkSet set, IReadOnlyList<Point?> pixels, FilmScale scale) =>
        new(set, scale, Scaled(set, pixels, scale), null);

    /// <summary>Landmarks with their joint covariance.</summary>
    /// <param name="set">Landmark set of the view.</param>
    /// <param name="pixels">Position of each landmark of the set in pixels of the original image, or null.</param>
    /// <param name="spread">Joint covariance in squared pixels, in the order of the set.</param>
    /// <param name="scale">Pixel spacing.</param>
    /// <exception cref="ArgumentException">The number of positions or of covariances is not that of the set.</exception>
    public static LaidLandmarks WithSpread(
        LandmarkSet set, IReadOnlyList<Point?> pixels, JointCovariance spread, FilmScale scale)
    {
        ArgumentNullException.ThrowIfNull(spread);
        var scaled = Scaled(set, pixels, scale);
        return spread.Count == scaled.Length
            ? new LaidLandmarks(set, scale, scaled, spread.Scaled(scale.ColumnSpacing, scale.RowSpacing))
            : throw new ArgumentException($"{spread.Count} covariances for {scaled.Length} landmarks.", nameof(spread));
    }

    /// <summary>Whether a landmark has a position.</summary>
    public bool Has(string name) => Set.IndexOf(name) is >= 0 and var index && points[index].IsFinite;

    private static Point[] Scaled(LandmarkSet set, IReadOnlyList<Point?> pixels, FilmScale scale)
    {
        ArgumentNullException.ThrowIfNull(set);
        ArgumentNullException.ThrowIfNull(pixels);
        if (pixels.Count != set.Landmarks.Count)
        {
            throw new ArgumentException($"{pixels.Count} positions for {set.Landmarks.Count} landmarks.", nameof(pixels));
        }

        return [.. pixels.Select(p => p is { IsFinite: true } point ? scale.Scale(point) : new Point(double.NaN, double.NaN))];
    }
}
