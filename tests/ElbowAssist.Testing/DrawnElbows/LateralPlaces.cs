using ElbowAssist.Geometry;
using static ElbowAssist.Anatomy.Landmarks.LandmarkNames;

namespace ElbowAssist.Testing.DrawnElbows;

/// <summary>Lateral landmarks: humerus up, forearm to the left at a right angle before any displacement.</summary>
internal static class LateralPlaces
{
    private const double ShaftX = 600;
    private const double RoofY = 560;

    public static Dictionary<string, Point> Of(DrawnElbow e)
    {
        var places = new Dictionary<string, Point>(StringComparer.Ordinal);
        double[] levels = [3.0, 2.5, 2.0, 1.5, 1.0];
        for (var i = 0; i < 5; i++)
        {
            places[HumerusAnterior(i + 1)] = new(ShaftX - (e.W / 2), RoofY - (levels[i] * e.W));
            places[HumerusPosterior(i + 1)] = new(ShaftX + (e.W / 2), RoofY - (levels[i] * e.W));
        }

        places[HumerusFossaRoof] = new(ShaftX, RoofY);
        var below = Below(e);
        places[FatPadAnteriorBase] = new(ShaftX - (0.52 * e.W), RoofY - (0.1 * e.W));
        places[FatPadAnteriorTip] = Along(places[FatPadAnteriorBase], 0.75 * e.W, e.FatPadAngle);
        places[FatPadPosteriorTip] = new(ShaftX + (0.62 * e.W), RoofY + (0.5 * e.W));
        var (sin, cos) = Math.SinCos(e.Extension * Math.PI / 180);
        var hinge = new Point(ShaftX, RoofY + (0.2 * e.W));
        foreach (var (name, p) in below)
        {
            // Extension turns the forearm away from the front: down and backwards on a film with the front to the left.
            var (dx, dy) = (p.X - hinge.X, p.Y - hinge.Y);
            places[name] = new(hinge.X + (cos * dx) + (sin * dy) + (e.BackwardShift * e.W), hinge.Y - (sin * dx) + (cos * dy));
        }

        return places;
    }

    private static Dictionary<string, Point> Below(DrawnElbow e)
    {
        var r = e.Capitellum;
        var c = new Point(ShaftX - (e.W / 2) - (e.CentreBeforeLine * r), RoofY + (1.25 * e.W));
        var t = new Point(c.X + 3, c.Y - 2);
        var places = new Dictionary<string, Point>(StringComparer.Ordinal)
        {
            [HumerusWaist] = Along(c, -1.05 * e.W, e.CondylarTilt),
        };
        for (var i = 0; i < 12; i++)
        {
            if (e.Growing || i is <= 4 or 11)
            {
                places[CapitellumRim(i + 1)] = Along(c, r, 30 * i);
            }
        }

        if (e.Growing)
        {
            var middle = Along(c, -(r + (0.08 * e.W)), e.CondylarTilt);
            places[CapitellumPhysisAnterior] = Along(middle, 0.9 * r, e.CondylarTilt + 90);
            places[CapitellumPhysisPosterior] = Along(middle, -0.9 * r, e.CondylarTilt + 90);
        }

        for (var i = 0; i < 5 && !e.Growing; i++)
        {
            places[TrochleaLip(i + 1)] = Along(t, 1.16 * r, i == 0 ? -30 : 30 * (i - 1));
        }

        AddForearm(places, e, c, t, e.Growing ? r + (0.18 * e.W) : r);
        return places;
    }

    private static void AddForearm(Dictionary<string, Point> places, DrawnElbow e, Point c, Point t, double joint)
    {
        var d = e.RadialHead;
        var axisY = c.Y - (e.RadialOffset * 2 * e.Capitellum);
        var surface = c.X - joint - 5;
        places[RadiusHeadAnterior] = new(surface, axisY - (d / 2));
        places[RadiusHeadPosterior] = new(surface, axisY + (d / 2));
        double[] levels = [0.6, 0.85, 2.0, 2.6];
        double[] half = [0.33, 0.32, 0.36, 0.36];
        for (var i = 0; i < 4; i++)
        {
            places[RadiusAnterior(i + 1)] = new(surface - (levels[i] * d), axisY - (half[i] * d));
            places[RadiusPosterior(i + 1)] = new(surface - (levels[i] * d), axisY + (half[i] * d));
        }

        var notch = 1.22 * joint;
        places[UlnaCoronoid] = Along(t, notch * 1.05, 55);
        places[UlnaOlecranon] = Along(t, notch * 1.25, e.Growing ? -95 : -135);
        double[] angles = [35, 0, -35, -75];
        for (var i = 0; i < 4; i++)
        {
            places[UlnaNotch(i + 1)] = Along(t, notch, angles[i]);
        }

        for (var i = 0; i < 3; i++)
        {
            places[UlnaPosterior(i + 1)] = new(t.X - ((2 + (2 * i)) * e.W), t.Y + notch + (0.75 * e.W));
        }
    }

    // 0° points distally along the shaft, 90° to the front (left).
    private static Point Along(Point from, double distance, double degrees)
    {
        var (sin, cos) = Math.SinCos(degrees * Math.PI / 180);
        return new(from.X - (distance * sin), from.Y + (distance * cos));
    }
}
