using ElbowAssist.Geometry;

namespace ElbowAssist.Anatomy.Measurements.Construction;

/// <summary>
/// Two opposite cortices of a bone: they tell which way is anterior, flexor or lateral, so that no sign depends on how
/// the film lies.
/// </summary>
internal sealed class Cortices
{
    private readonly int[] positive;
    private readonly int[] negative;

    /// <param name="laid">The film's landmarks.</param>
    /// <param name="positive">Names on the side that counts positive.</param>
    /// <param name="negative">Names on the opposite side.</param>
    public Cortices(LaidLandmarks laid, IEnumerable<string> positive, IEnumerable<string> negative)
    {
        this.positive = [.. positive.Select(laid.Set.IndexOf).Where(i => laid.Points[i].IsFinite)];
        this.negative = [.. negative.Select(laid.Set.IndexOf).Where(i => laid.Points[i].IsFinite)];
    }

    /// <summary>From the mean of the negative side to the mean of the positive; NaN if one of them is not on the film.</summary>
    public Vector Across(ReadOnlySpan<Point> points) => Mean(points, positive) - Mean(points, negative);

    private static Point Mean(ReadOnlySpan<Point> points, int[] indices)
    {
        double x = 0, y = 0;
        foreach (var i in indices)
        {
            x += points[i].X;
            y += points[i].Y;
        }

        return new Point(x / indices.Length, y / indices.Length);
    }
}
