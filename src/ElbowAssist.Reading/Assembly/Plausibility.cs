using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Anatomy.Measurements;
using ElbowAssist.Geometry;
using ElbowAssist.Reading.Limits;
using ElbowAssist.Reading.Reasons;
using static ElbowAssist.Anatomy.Landmarks.LandmarkNames;

namespace ElbowAssist.Reading.Assembly;

/// <summary>
/// Whether the landmarks can be those of an elbow at all: cortices on their sides at every level, enough pixels across the
/// bone, a capitellum of a size that occurs.
/// </summary>
internal static class Plausibility
{
    public static IEnumerable<AdequacyCheck> Check(
        FilmLandmarks film, IReadOnlyList<MeasuredValue> values, AdequacyLimits limits)
    {
        Point?[] pixels = [.. film.Set.Landmarks.Select((_, i) =>
            film.Laid.Points[i].IsFinite ? film.Laid.Scale.ToPixels(film.Laid.Points[i]) : (Point?)null)];
        if (ShaftWidth.Seen(film.Set, pixels) is not { } width)
        {
            yield break;
        }

        var fewest = limits["shaft.width-pixels"];
        yield return new("shaft.width-pixels", width, fewest, width >= fewest, width >= fewest ? null : FilmReasons.ResolutionLow);
        var crossed = CrossedLevels(film.Set, pixels);
        yield return new("shaft.crossed-levels", crossed, 0, crossed == 0, crossed == 0 ? null : FilmReasons.ShapeImplausible);
        if (values.SelectMany(v => v.Circles).FirstOrDefault(c => c.Name == "capitellum") is { } capitellum)
        {
            var diameter = 2 * capitellum.Circle.Radius / width;
            var (smallest, largest) = (limits["capitellum.smallest-diameter"], limits["capitellum.largest-diameter"]);
            var limit = diameter < smallest ? smallest : largest;
            var met = diameter >= smallest && diameter <= largest;
            yield return new("capitellum.diameter", diameter, limit, met, met ? null : FilmReasons.ShapeImplausible);
        }
    }

    // A level is crossed if its cortices lie the other way round than at the first level seen.
    private static int CrossedLevels(LandmarkSet set, Point?[] pixels)
    {
        var lateral = set.View == View.Lateral;
        Vector[] across = [.. Enumerable.Range(1, lateral ? 5 : 4)
            .Select(n => (
                A: pixels[set.IndexOf(lateral ? HumerusAnterior(n) : HumerusLateral(n))],
                B: pixels[set.IndexOf(lateral ? HumerusPosterior(n) : HumerusMedial(n))]))
            .Where(p => p.A is not null && p.B is not null)
            .Select(p => p.A!.Value - p.B!.Value)];
        return across.Count(v => v.Dot(across[0]) < 0);
    }
}
