using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Geometry;

namespace ElbowAssist.Testing;

/// <summary>
/// Made-up landmarks of a made-up adult elbow on films of 800 by 1000 pixels, humerus up, forearm to the left on the
/// lateral. The proportions are invented for tests; no film and no patient stands behind them.
/// </summary>
public static class SampleLandmarks
{
    /// <summary>Columns of the sample films.</summary>
    public const int Width = 800;

    /// <summary>Rows of the sample films.</summary>
    public const int Height = 1000;

    private static readonly Point Capitellum = new(382, 640);
    private static readonly Point Trochlea = new(388, 636);

    /// <summary>The lateral landmarks, each with a spread of a pixel or two.</summary>
    public static IReadOnlyList<Landmark> Lateral(LandmarkSource source = LandmarkSource.Model) =>
        Lay(LandmarkSet.Lateral, LateralPlaces(), source);

    /// <summary>The AP landmarks, each with a spread of a pixel or two.</summary>
    public static IReadOnlyList<Landmark> Ap(LandmarkSource source = LandmarkSource.Model) =>
        Lay(LandmarkSet.Ap, ApPlaces(), source);

    private static List<Landmark> Lay(LandmarkSet set, Dictionary<string, Point> places, LandmarkSource source) =>
        [.. set.Landmarks.Select(d => places.TryGetValue(d.Name, out var p)
            ? new Landmark(d.Name, d.Kind, p, d.Kind == LandmarkKind.Contour ? new Covariance(1.5, 0.2, 4) : Covariance.Isotropic(2), 0.97, source)
            : new Landmark(d.Name, d.Kind, null, null, 0.02, source))];

    private static Dictionary<string, Point> LateralPlaces()
    {
        var places = new Dictionary<string, Point>(StringComparer.Ordinal)
        {
            [LandmarkNames.HumerusFossaRoof] = new(424, 560),
            [LandmarkNames.HumerusWaist] = new(418, 585),
            [LandmarkNames.RadiusHeadAnterior] = new(310, 606),
            [LandmarkNames.RadiusHeadPosterior] = new(310, 680),
            [LandmarkNames.UlnaCoronoid] = new(318, 700),
            [LandmarkNames.UlnaOlecranon] = new(492, 602),
            [LandmarkNames.FatPadAnteriorTip] = new(345, 545),
            [LandmarkNames.FatPadAnteriorBase] = new(374, 505),
            [LandmarkNames.FatPadPosteriorTip] = new(478, 540),
        };
        double[] levels = [290, 335, 380, 425, 470];
        double[] anterior = [376, 375, 375, 374, 374];
        for (var i = 0; i < 5; i++)
        {
            places[LandmarkNames.HumerusAnterior(i + 1)] = new(anterior[i], levels[i]);
            places[LandmarkNames.HumerusPosterior(i + 1)] = new(465, levels[i]);
            places[LandmarkNames.TrochleaLip(i + 1)] = OnArc(Trochlea, 74, i == 0 ? -30 : 30 * (i - 1));
        }

        for (var i = 0; i < 12; i++)
        {
            if (i is <= 4 or 11)
            {
                places[LandmarkNames.CapitellumRim(i + 1)] = OnArc(Capitellum, 62, 30 * i);
            }
        }

        double[] along = [266, 247, 162, 118];
        double[] half = [23, 22, 26, 27];
        for (var i = 0; i < 4; i++)
        {
            places[LandmarkNames.RadiusAnterior(i + 1)] = new(along[i], 643 - half[i]);
            places[LandmarkNames.RadiusPosterior(i + 1)] = new(along[i], 643 + half[i]);
            places[LandmarkNames.UlnaNotch(i + 1)] = OnArc(Trochlea, 84, -60 - (-30 * i) - 20);
        }

        double[] shaft = [330, 210, 90];
        for (var i = 0; i < 3; i++)
        {
            places[LandmarkNames.UlnaPosterior(i + 1)] = new(shaft[i], 776 + (2 * i));
        }

        return places;
    }

    private static Dictionary<string, Point> ApPlaces()
    {
        var places = new Dictionary<string, Point>(StringComparer.Ordinal)
        {
            [LandmarkNames.HumerusEpicondyleLateral] = new(290, 560),
            [LandmarkNames.HumerusEpicondyleMedial] = new(535, 545),
            [LandmarkNames.HumerusFossaRoof] = new(412, 520),
            [LandmarkNames.CapitellumEdgeLateral] = new(305, 610),
            [LandmarkNames.CapitellumEdgeMedial] = new(395, 615),
            [LandmarkNames.CapitellumDistal] = new(350, 655),
            [LandmarkNames.TrochleaEdgeMedial] = new(510, 620),
            [LandmarkNames.RadiusHeadLateral] = new(308, 672),
            [LandmarkNames.RadiusHeadMedial] = new(388, 676),
        };
        double[] humerus = [220, 280, 340, 400];
        double[] radius = [722, 742, 840, 890];
        double[] ulna = [790, 860, 930];
        for (var i = 0; i < 4; i++)
        {
            places[LandmarkNames.HumerusLateral(i + 1)] = new(360 - (i * i), humerus[i]);
            places[LandmarkNames.HumerusMedial(i + 1)] = new(452 + (i * i), humerus[i]);
            places[LandmarkNames.RadiusLateral(i + 1)] = new(322 + (3 * i), radius[i]);
            places[LandmarkNames.RadiusMedial(i + 1)] = new(372 + (3 * i), radius[i]);
        }

        for (var i = 0; i < 3; i++)
        {
            places[LandmarkNames.UlnaLateral(i + 1)] = new(410 + (4 * i), ulna[i]);
            places[LandmarkNames.UlnaMedial(i + 1)] = new(475 + (2 * i), ulna[i]);
        }

        return places;
    }

    // 0° is distal (down on these films), 90° anterior (left).
    private static Point OnArc(Point centre, double radius, double degrees)
    {
        var (sine, cosine) = Math.SinCos(degrees * Math.PI / 180);
        return new Point(centre.X - (radius * sine), centre.Y + (radius * cosine));
    }
}
