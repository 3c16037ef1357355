using ElbowAssist.Geometry;
using static ElbowAssist.Anatomy.Landmarks.LandmarkNames;

namespace ElbowAssist.Testing.DrawnElbows;

/// <summary>AP landmarks: humerus up, lateral side to the left.</summary>
internal static class ApPlaces
{
    private const double ShaftX = 400;
    private const double RoofY = 520;

    public static Dictionary<string, Point> Of(DrawnElbow e)
    {
        var places = new Dictionary<string, Point>(StringComparer.Ordinal);
        double[] levels = [3.5, 2.75, 2.0, 1.25];
        double[] half = [0.52, 0.52, 0.56, 0.72];
        for (var i = 0; i < 4; i++)
        {
            places[HumerusLateral(i + 1)] = new(ShaftX - (half[i] * e.W), RoofY - (levels[i] * e.W));
            places[HumerusMedial(i + 1)] = new(ShaftX + (half[i] * e.W), RoofY - (levels[i] * e.W));
        }

        places[HumerusFossaRoof] = new(ShaftX, RoofY);
        var sideways = e.BackwardShift * e.W * 0.4;
        Point At(double across, double down) => new(ShaftX + (across * e.W) + sideways, RoofY + (down * e.W));
        places[HumerusEpicondyleLateral] = At(-1.35, 0.8);
        places[HumerusEpicondyleMedial] = At(1.55, 0.7);
        var r = e.Capitellum / e.W;
        places[CapitellumEdgeLateral] = At(-0.55 - (1.05 * r), 1.45);
        places[CapitellumEdgeMedial] = At(-0.55 + (1.05 * r), 1.45);
        places[CapitellumDistal] = At(-0.55, 1.45 + r);
        places[TrochleaEdgeMedial] = At(1.15, 1.6);
        if (e.Growing)
        {
            var slope = Math.Tan((90 - e.Baumann) * Math.PI / 180);
            places[CapitellumPhysisLateral] = At(-1.1, 0.85 - (0.55 * slope));
            places[CapitellumPhysisMedial] = At(0, 0.85 + (0.55 * slope));
        }

        AddForearm(places, e, sideways, r);
        return places;
    }

    private static void AddForearm(Dictionary<string, Point> places, DrawnElbow e, double sideways, double r)
    {
        var d = e.RadialHead;
        var axis = ShaftX - (0.55 * e.W) - (0.35 * r * e.W) + sideways;
        var surface = RoofY + ((1.5 + r) * e.W) + (e.Growing ? 0.25 * e.W : 5);
        places[RadiusHeadLateral] = new(axis - (d / 2), surface);
        places[RadiusHeadMedial] = new(axis + (d / 2), surface);
        double[] levels = [0.6, 0.85, 2.0, 2.6];
        double[] half = [0.33, 0.32, 0.36, 0.36];
        for (var i = 0; i < 4; i++)
        {
            places[RadiusLateral(i + 1)] = new(axis - (half[i] * d), surface + (levels[i] * d));
            places[RadiusMedial(i + 1)] = new(axis + (half[i] * d), surface + (levels[i] * d));
        }

        var ulna = ShaftX + (0.75 * e.W) + sideways;
        for (var i = 0; i < 3; i++)
        {
            var down = surface + ((2 + (2 * i)) * e.W);
            places[UlnaLateral(i + 1)] = new(ulna - (0.42 * e.W), down);
            places[UlnaMedial(i + 1)] = new(ulna + (0.42 * e.W), down);
        }
    }
}
