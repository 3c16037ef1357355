using ElbowAssist.Anatomy;
using ElbowAssist.Geometry;
using ElbowAssist.Reading;
using static ElbowAssist.Anatomy.Landmarks.LandmarkNames;

namespace ElbowAssist.Drawing.Overlay;

/// <summary>Rough outlines of the bones, to keep words and rulers off them.</summary>
internal static class Bones
{
    public static IReadOnlyList<Region> Of(FilmReading reading, LaidPlaces places) => reading.View.Name switch
    {
        View.Lateral =>
        [
            Shaft(places.Family(HumerusAnterior, 5), places.Family(HumerusPosterior, 5), extendFirst: true),
            Shaft(places.Family(RadiusAnterior, 4), places.Family(RadiusPosterior, 4), extendFirst: false),
            new Inside([.. places.Family(UlnaNotch, 4), .. places.Family(UlnaPosterior, 3)]),
            new Inside([.. Points(places[HumerusAnterior(5)], places[UlnaCoronoid]), .. places.Family(UlnaPosterior, 1), .. Points(places[UlnaOlecranon], places[HumerusPosterior(5)])]),
            .. reading.Circles.Select(c => new Disk(c.Centre, 1.1 * c.Radius)),
        ],
        View.Ap =>
        [
            Shaft(places.Family(HumerusLateral, 4), places.Family(HumerusMedial, 4), extendFirst: true),
            Shaft(places.Family(RadiusLateral, 4), places.Family(RadiusMedial, 4), extendFirst: false),
            Shaft(places.Family(UlnaLateral, 3), places.Family(UlnaMedial, 3), extendFirst: false),
            new Inside(
            [
                .. Points(places[HumerusLateral(4)], places[HumerusEpicondyleLateral], places[CapitellumEdgeLateral], places[RadiusHeadLateral]),
                .. Points(places[UlnaMedial(1)], places[TrochleaEdgeMedial], places[HumerusEpicondyleMedial], places[HumerusMedial(4)]),
            ]),
        ],
        _ => [],
    };

    /// <summary>Between two cortices, and on beyond the landmarks away from the joint.</summary>
    private static Inside Shaft(IReadOnlyList<Point> one, IReadOnlyList<Point> other, bool extendFirst)
    {
        IReadOnlyList<Point> a = extendFirst ? [.. one.Reverse()] : one, b = extendFirst ? [.. other.Reverse()] : other;
        return new Inside([.. a, .. Beyond(a), .. Beyond(b), .. b.Reverse()]);
    }

    private static IEnumerable<Point> Beyond(IReadOnlyList<Point> cortex) =>
        cortex.Count > 1 ? [cortex[^1] + (2 * (cortex[^1] - cortex[0]))] : [];

    private static IEnumerable<Point> Points(params Point?[] points) => points.OfType<Point>();
}
