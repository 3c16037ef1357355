using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Geometry;

namespace ElbowAssist.Bench.Datasets;

/// <summary>
/// Directions of outlines that nobody stated: at each contour landmark the chord between its neighbours in the same
/// numbered family, at the ends that to the one neighbour (construction of this project).
/// </summary>
internal static class ContourTangents
{
    /// <summary>Directions in the order of a set; null for points and where no neighbour was laid.</summary>
    public static IReadOnlyList<Vector?> Of(LandmarkSet set, IReadOnlyList<Point?> places) =>
        [.. set.Landmarks.Select((l, i) => l.Kind == LandmarkKind.Contour && places[i] is { } here ? Chord(here, Neighbour(set, places, i, -1), Neighbour(set, places, i, 1)) : null)];

    private static Vector? Chord(Point here, Point? before, Point? after) => (before, after) switch
    {
        (null, null) => null,
        (null, { } next) => next - here,
        ({ } previous, null) => here - previous,
        ({ } previous, { } next) => next - previous,
    };

    private static Point? Neighbour(LandmarkSet set, IReadOnlyList<Point?> places, int index, int step)
    {
        var other = index + step;
        return other >= 0 && other < places.Count && Family(set.Landmarks[other].Name) is { } family && family == Family(set.Landmarks[index].Name) ? places[other] : null;
    }

    private static string? Family(string name) => char.IsAsciiDigit(name[^1]) ? name[..name.LastIndexOf('.')] : null;
}
