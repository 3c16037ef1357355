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
            Subchondral = 0.25f + (0.2f * (float)s.Wear),
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

    /// <summary>
    /// The fossae meet where the wanted condylar axis passes the wanted height; a few corrections, because the narrowest
    /// place is not quite where either fossa is deepest.
    /// </summary>
    private static void Fossae(ref HumerusGeometry h, HumerusShape s, float k)
    {
        var c = h.Capitellum.Centre;
        var lean = (s.CondylarTiltDegrees * Math.PI / 180) - Math.Atan(ShaftSlope(in h, s));
        var wanted = new Vec3(c.X - (((float)s.WaistHeight - c.Y) * (float)Math.Tan(lean)), (float)s.WaistHeight, 0);
        var aim = wanted;
        for (var i = 0; i < 4; i++)
        {
            Meet(ref h, s, k, aim);
            aim = aim + (wanted - Waist(in h)) with { Z = 0 };
        }

        var front = HumerusField.Axis(in h, c.Y + h.Capitellum.Radii.Y).X + HumerusField.HalfAp(in h, c.Y + h.Capitellum.Radii.Y);
        var radial = (float)s.RadialFossaDepth;
        h.RadialFossa = Oval.Of(new Vec3(front + (4 * k) - radial, c.Y + h.Capitellum.Radii.Y + (4 * k), c.Z), new Vec3(4, 5, 5.5f) * k);
    }

    /// <summary>Sinks both fossae to a place between them; each keeps a little depth, whatever is wanted.</summary>
    private static void Meet(ref HumerusGeometry h, HumerusShape s, float k, Vec3 waist)
    {
        var (high, low) = ((float)s.OlecranonFossaHeight, waist.Y);
        var front = HumerusField.Axis(in h, low).X + HumerusField.HalfAp(in h, low);
        var back = HumerusField.Axis(in h, high).X - HumerusField.HalfAp(in h, high);
        var septum = (float)s.Septum;
        var middle = MathF.Min(MathF.Max(waist.X, back + (5 * k)), front - (3 * k));
        var behind = back - (2 * k);
        var off = (low - high) / (0.55f * (float)s.OlecranonFossaLength);
        var depth = (middle - (0.5f * septum) - behind) / MathF.Sqrt(MathF.Max(1 - (off * off), 0.3f));
        h.OlecranonFossa = Fossa(new Vec3(behind, high, -3 * k), depth, 2 * k, s.OlecranonFossaLength, s.OlecranonFossaWidth);
        var ahead = front + (1.5f * k);
        var floor = middle + (0.5f * septum);
        h.CoronoidFossa = Fossa(new Vec3(ahead, low, -4 * k), ahead - floor, 1.5f * k, s.CoronoidFossaLength, s.CoronoidFossaWidth);
    }

    /// <summary>Anterior lean of the shaft going up, mm per mm, over the levels its axis is laid through.</summary>
    private static float ShaftSlope(in HumerusGeometry h, HumerusShape s)
    {
        var (roof, w) = (RoofHeight(s), (float)s.WaistAp);
        var slope = 0f;
        for (var level = -1f; level <= 1f; level += 0.5f)
        {
            slope += level * HumerusField.Axis(in h, roof + ((2 + level) * w)).X;
        }

        return slope / (2.5f * w);
    }

    /// <summary>Middle between the floors of the two fossae where they come closest.</summary>
    public static Vec3 Waist(in HumerusGeometry h)
    {
        var z = 0.5f * (h.OlecranonFossa.Centre.Z + h.CoronoidFossa.Centre.Z);
        float best = float.MaxValue, bestY = h.CoronoidFossa.Centre.Y, bestX = 0;
        for (var y = h.CoronoidFossa.Centre.Y - 5; y <= h.CoronoidFossa.Centre.Y + 7; y += 0.05f)
        {
            var behind = Floor(h.OlecranonFossa, y, z, 1);
            var ahead = Floor(h.CoronoidFossa, y, z, -1);
            if (ahead - behind < best)
            {
                (best, bestY, bestX) = (ahead - behind, y, 0.5f * (ahead + behind));
            }
        }

        return new Vec3(bestX, bestY, z);
    }

    private static float Floor(Oval o, float y, float z, float sign)
    {
        float a = (y - o.Centre.Y) / o.Radii.Y, b = (z - o.Centre.Z) / o.Radii.Z;
        return o.Centre.X + (sign * o.Radii.X * MathF.Sqrt(MathF.Max(1 - (a * a) - (b * b), 0)));
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
