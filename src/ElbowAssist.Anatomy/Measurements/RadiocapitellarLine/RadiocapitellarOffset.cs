using ElbowAssist.Anatomy.Rules;

namespace ElbowAssist.Anatomy.Measurements.RadiocapitellarLine;

/// <summary>What the radiocapitellar offsets of both views share.</summary>
internal static class RadiocapitellarOffset
{
    /// <summary>Publication behind the choice of axes.</summary>
    public static string Source => Publications.Ramirez.Citation;

    /// <summary>Edges of the capitellum.</summary>
    public static IReadOnlyList<double> Limits { get; } = [-0.5, 0.5];

    /// <summary>
    /// Offset of a line from the middle of an extent, over the extent.
    /// </summary>
    /// <param name="low">Coordinate of one edge counted from the line toward the positive side.</param>
    /// <param name="high">Coordinate of the other edge.</param>
    public static double Of(double low, double high) => -(low + high) / (2 * Math.Abs(high - low));
}
