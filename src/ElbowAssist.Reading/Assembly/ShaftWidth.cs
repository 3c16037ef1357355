using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Geometry;
using static ElbowAssist.Anatomy.Landmarks.LandmarkNames;

namespace ElbowAssist.Reading.Assembly;

/// <summary>Width of the humeral shaft as the film shows it: the ruler where no spacing is known.</summary>
public static class ShaftWidth
{
    /// <summary>
    /// Smallest distance of the two humeral cortices at one level, in pixels. Without both cortices a quarter of the reach
    /// of all landmarks on the film, since without the shaft they reach some four shaft widths.
    /// </summary>
    public static double InPixels(LandmarkSet set, IReadOnlyList<Point?> pixels)
    {
        var seen = Seen(set, pixels);
        if (seen is not null)
        {
            return seen.Value;
        }

        var there = pixels.Where(p => p is not null).Select(p => p!.Value).ToList();
        return there.Count == 0
            ? 1
            : Math.Max(there.Max(p => p.X) - there.Min(p => p.X), there.Max(p => p.Y) - there.Min(p => p.Y)) / 4;
    }

    /// <summary>Smallest distance of the two humeral cortices at one level, in pixels, or null if no level shows both.</summary>
    public static double? Seen(LandmarkSet set, IReadOnlyList<Point?> pixels)
    {
        var (a, b, levels) = set.View == View.Lateral
            ? ((Func<int, string>)HumerusAnterior, (Func<int, string>)HumerusPosterior, 5)
            : (HumerusLateral, HumerusMedial, 4);
        return Enumerable.Range(1, levels)
            .Select(n => (A: pixels[set.IndexOf(a(n))], B: pixels[set.IndexOf(b(n))]))
            .Where(p => p.A is not null && p.B is not null)
            .Select(p => (double?)p.A!.Value.DistanceTo(p.B!.Value))
            .Min();
    }
}
