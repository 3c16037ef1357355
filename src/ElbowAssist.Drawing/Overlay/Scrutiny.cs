using ElbowAssist.Anatomy;
using ElbowAssist.Geometry;
using ElbowAssist.Reading;
using static ElbowAssist.Anatomy.Landmarks.LandmarkNames;

namespace ElbowAssist.Drawing.Overlay;

/// <summary>
/// Where a reader looks for a fracture and no line may lie: the radial head and neck, the anterior humeral cortex, the
/// joint, the physis of the lateral condyle. Sizes are our own choice, made by eye on simulated films.
/// </summary>
internal static class Scrutiny
{
    private const double CortexShareOfShaft = 0.10;

    public static IReadOnlyList<Region> Of(FilmReading reading, LaidPlaces places) => reading.View.Name switch
    {
        View.Lateral => [.. Lateral(reading, places)],
        View.Ap => [.. Ap(places)],
        _ => [],
    };

    private static IEnumerable<Region> Lateral(FilmReading reading, LaidPlaces places)
    {
        foreach (var head in RadialHead(places[RadiusHeadAnterior], places[RadiusHeadPosterior], places[RadiusAnterior(1)], places[RadiusPosterior(1)]))
        {
            yield return head;
        }

        var cortex = places.Family(HumerusAnterior, 5);
        if (ShaftWidth(places, HumerusAnterior, HumerusPosterior, 5) is { } width && cortex.Count > 1)
        {
            // On below the lowest level, where supracondylar fractures run, as far as the line still lies close to the cortex.
            var below = (cortex[^1] - cortex[0]).Unit * (0.8 * width);
            yield return new Along([.. cortex, cortex[^1] + below], CortexShareOfShaft * width);
        }

        if (places[RadiusHeadAnterior] is { } anterior && places[RadiusHeadPosterior] is { } posterior)
        {
            foreach (var circle in reading.Circles)
            {
                var facing = Point.Midpoint(anterior, posterior) - circle.Centre;
                yield return new FacingRim(circle.Centre, circle.Radius, facing, 0.14 * circle.Radius, 110);
            }
        }
    }

    private static IEnumerable<Region> Ap(LaidPlaces places)
    {
        foreach (var head in RadialHead(places[RadiusHeadLateral], places[RadiusHeadMedial], places[RadiusLateral(1)], places[RadiusMedial(1)]))
        {
            yield return head;
        }

        if (places[CapitellumEdgeLateral] is { } lateral && places[CapitellumEdgeMedial] is { } medial)
        {
            var width = lateral.DistanceTo(medial);
            var joint = new[] { lateral, places[CapitellumDistal], medial, places[TrochleaEdgeMedial] }.OfType<Point>().ToList();
            yield return new Along(joint, 0.14 * width);
            if (places[CapitellumPhysisLateral] is { } physisLateral && places[CapitellumPhysisMedial] is { } physisMedial)
            {
                yield return new Along([physisLateral, physisMedial], 0.12 * width);
            }
        }
    }

    private static IEnumerable<Region> RadialHead(Point? rimA, Point? rimB, Point? neckA, Point? neckB)
    {
        if (rimA is not { } a || rimB is not { } b)
        {
            yield break;
        }

        var rim = Point.Midpoint(a, b);
        var diameter = a.DistanceTo(b);
        var neck = neckA is { } c && neckB is { } d ? Point.Midpoint(c, d) : rim;
        yield return new Disk(Point.Midpoint(rim, neck), 0.62 * diameter);
    }

    /// <summary>Median distance of paired cortices.</summary>
    internal static double? ShaftWidth(LaidPlaces places, Func<int, string> one, Func<int, string> other, int count)
    {
        var widths = Enumerable.Range(1, count)
            .Where(n => places[one(n)] is not null && places[other(n)] is not null)
            .Select(n => places[one(n)]!.Value.DistanceTo(places[other(n)]!.Value))
            .Order()
            .ToList();
        return widths.Count == 0 ? null : widths[widths.Count / 2];
    }
}
