namespace ElbowAssist.Geometry;

/// <summary>
/// How much of a hostile or damaged input is taken in, all in one place: whatever reads files, answers or requests takes its
/// limits from here. A limit turns an input away in a sentence, or leaves out the part beyond it; none is felt by films as
/// they come (common practice, no source, where nothing else is said).
/// </summary>
internal static class InputLimits
{
    /// <summary>
    /// Farthest a place may lie from the corner of a film, in pixels: fifteen times the longest side a film may have, and
    /// so near that products of coordinates stay exact enough to compute with.
    /// </summary>
    public const double Coordinate = 1_000_000;

    /// <summary>Whether a place can be one on or beside a film.</summary>
    public static bool Holds(Point place) => Math.Abs(place.X) <= Coordinate && Math.Abs(place.Y) <= Coordinate;

    /// <summary>Whether a spread can be one of such places.</summary>
    public static bool Holds(Covariance spread) => spread.XX <= Coordinate * Coordinate && spread.YY <= Coordinate * Coordinate;
}
