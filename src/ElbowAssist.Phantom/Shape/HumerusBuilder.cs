using ElbowAssist.Phantom.Rendering.Field;

namespace ElbowAssist.Phantom.Shape;

/// <summary>
/// Turns the parameters of the humerus into its surface. Heights and proportions follow sections measured on one
/// public adult bone of 63.9 mm epicondylar width, scaled by the epicondylar width.
/// </summary>
internal static class HumerusBuilder
{
    private const double MeasuredEpicondylarWidth = 63.9;

    public static HumerusGeometry Build(HumerusShape s)
    {
        var k = (float)(s.EpicondylarWidth / MeasuredEpicondylarWidth);
        var h = new HumerusGeometry
        {
            ShaftX = -16f * k,
            DistalX = (-16f * k) + (float)s.ForwardReach,
            ShaftZ = (float)s.ShaftZ,
            DistalZ = (float)s.DistalZ,
            CurveHeight = 80f * k,
            Bow = (float)s.Bow,
            WaistAp = (float)s.WaistAp / 2,
            ShaftAp = (float)s.ShaftAp / 2,
            DistalAp = (float)s.DistalAp / 2,
            ApShaftFrom = 45f * k,
            ApShaftTo = 105f * k,
            ApDistalFrom = 33f * k,
            ApDistalTo = 15f * k,
            ShaftMl = (float)s.ShaftMl / 2,
            DistalMl = (float)s.FlareMl / 2,
            FlareTop = 95f * k,
            FlareBottom = 20f * k,
            BladeEnd = 3f * k,
            CortexDistal = (float)s.CortexDistal,
            CortexShaft = (float)s.CortexShaft,
            CortexFrom = 14f * k,
            CortexTo = 85f * k,
            SpongyDistal = (float)s.SpongyDistal,
            SpongyShaft = (float)s.SpongyShaft,
            Subchondral = 0.25f,
            Trochlea = Trochlea(s),
            Capitellum = Oval.Of(new Vec3((float)s.CapitellumX, (float)s.CapitellumY, (float)s.CapitellumZ), new Vec3(
                    (float)s.CapitellumRadius,
                    (float)s.CapitellumRadius,
                    (float)(0.5 * (Math.Sqrt(s.CapitellumRadius * s.CapitellumTransverseRadius) + (0.19 * s.ArticularWidth))))),
        };
        PlaceShaft(ref h, s);
        Epicondyles(ref h, s, k);
        Fossae(ref h, s, k);
        Bounds(ref h, s, k);
        return h;
    }

    /// <summary>Height of the roof of the olecranon fossa.</summary>
    public static float RoofHeight(HumerusShape s) => (float)(s.OlecranonFossaHeight + (s.OlecranonFossaLength / 2));

    private static TrochleaGeometry Trochlea(HumerusShape s) => new()
    {
        MedialLipZ = (float)(-0.355 * s.ArticularWidth),
        MedialLipRadius = (float)s.MedialLipRadius,
        GrooveZ = (float)(-0.1 * s.ArticularWidth),
        GrooveRadius = (float)s.GrooveRadius,
        LateralLipZ = (float)(0.05 * s.ArticularWidth),
        LateralLipRadius = (float)s.LateralLipRadius,
        EndZ = (float)(0.165 * s.ArticularWidth),
        EndRadius = (float)(0.88 * s.CapitellumRadius),
        MedialRim = (float)(0.12 * s.ArticularWidth),
    };

    /// <summary>Moves the shaft so that the line along its anterior cortex crosses the capitellum where it is wanted.</summary>
    private static void PlaceShaft(ref HumerusGeometry h, HumerusShape s)
    {
        var roof = RoofHeight(s);
        var w = (float)s.WaistAp;
        float sy = 0, sx = 0, syy = 0, sxy = 0;
        for (var level = 1f; level <= 2f; level += 0.5f)
        {
            var y = roof + (level * w);
            var x = HumerusField.Axis(in h, y).X + HumerusField.HalfAp(in h, y);
            sy += y;
            sx += x;
            syy += y * y;
            sxy += x * y;
        }

        var slope = ((3 * sxy) - (sx * sy)) / ((3 * syy) - (sy * sy));
        var atZero = (sx - (slope * sy)) / 3;
        var ahead = (h.Capitellum.Centre.X - (slope * h.Capitellum.Centre.Y) - atZero) / MathF.Sqrt(1 + (slope * slope));
        var wanted = (float)((s.AnteriorLineShare - 0.5) * 2 * s.CapitellumRadius);
        h.ShaftX += ahead - wanted;
        h.DistalX += ahead - wanted;
    }

    private static void Epicondyles(ref HumerusGeometry h, HumerusShape s, float k)
    {
        var medial = HumerusField.Axis(in h, 26 * k);
        h.MedialEpicondyle = Cone.Of(
            new Vec3(medial.X - (0.5f * k), 26 * k, -15 * k),
            6.8f * k,
            new Vec3(medial.X + (4 * k), (float)s.MedialEpicondyleHeight, (float)-s.MedialEpicondyleReach + (6 * k)),
            6f * k);
        var lateral = HumerusField.Axis(in h, 28 * k);
        h.LateralEpicondyle = Cone.Of(
            new Vec3(lateral.X, 28 * k, 13 * k),
            6.5f * k,
            new Vec3(lateral.X + (5 * k), (float)s.LateralEpicondyleHeight, (float)s.LateralEpicondyleReach - (5.5f * k)),
            5.5f * k);
    }

    private static void Fossae(ref HumerusGeometry h, HumerusShape s, float k)
    {
        var y = (float)s.OlecranonFossaHeight;
        var back = HumerusField.Axis(in h, y).X - HumerusField.HalfAp(in h, y);
        var front = HumerusField.Axis(in h, y).X + HumerusField.HalfAp(in h, y);
        var coronoidFloor = front - (float)s.CoronoidFossaDepth;
        var olecranonFloor = coronoidFloor - (float)s.Septum;
        var behind = back - (2 * k);
        h.OlecranonFossa = Fossa(new Vec3(behind, y, -3 * k), olecranonFloor - behind, 2 * k, s.OlecranonFossaLength, s.OlecranonFossaWidth);
        var ahead = front + (1.5f * k);
        h.CoronoidFossa = Fossa(new Vec3(ahead, y - k, -4 * k), ahead - coronoidFloor, 1.5f * k, s.CoronoidFossaLength, s.CoronoidFossaWidth);
        var c = h.Capitellum.Centre;
        var radial = (float)s.RadialFossaDepth;
        h.RadialFossa = Oval.Of(new Vec3(front + (4 * k) - radial, c.Y + h.Capitellum.Radii.Y + (4 * k), c.Z), new Vec3(4, 5, 5.5f) * k);
    }

    /// <summary>An ellipsoid that opens to the given length and width at the surface of the bone.</summary>
    private static Oval Fossa(Vec3 centre, float depth, float outside, double length, double width)
    {
        var share = MathF.Min(outside / depth, 0.8f);
        var opening = MathF.Sqrt(1 - (share * share));
        return Oval.Of(centre, new Vec3(depth, (float)(length / 2) / opening, (float)(width / 2) / opening));
    }

    private static void Bounds(ref HumerusGeometry h, HumerusShape s, float k)
    {
        var widest = MathF.Max(HumerusField.HalfMl(in h, 42 * k), h.ShaftAp) + 2;
        var low = HumerusField.Axis(in h, 42 * k);
        var high = HumerusField.Axis(in h, 320 * k);
        h.ShaftBound = Cone.Of(low, widest, high, widest);
        var bow = MathF.Abs(h.Bow) * 240 * k * 240 * k / 4;
        h.ShaftBound.RadiusTo += bow;
        h.ShaftBound.RadiusFrom += 0.5f * bow;
        h.JointBound = Cone.Of(
            new Vec3(-6 * k, 9 * k, (float)-s.MedialEpicondyleReach + (8 * k)),
            26 * k,
            new Vec3(-6 * k, 9 * k, (float)s.LateralEpicondyleReach - (8 * k)),
            26 * k);
    }
}
