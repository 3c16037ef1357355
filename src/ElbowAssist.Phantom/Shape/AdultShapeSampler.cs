using ElbowAssist.Anatomy;
using ElbowAssist.Phantom.Sampling;

namespace ElbowAssist.Phantom.Shape;

/// <summary>
/// Draws adult elbows. Widths and correlations: transepicondylar width 62 ± 3.2 (men) and 55 ± 3.0 mm (women);
/// articular diameters after Giannicola et al., J Shoulder Elbow Surg 2017;26:e128; capitellum after J Shoulder Elbow
/// Surg 2011;20:880; radial head after Surg Radiol Anat 2019;41:415; ulna after Clin Anat 2007;20:407; bow of the
/// distal humerus after PubMed 36503839 (6.5 ± 2.9 degrees in 114). Where no measured distribution was found the spread is an estimate, wide on purpose.
/// </summary>
internal static class AdultShapeSampler
{
    public static ElbowShape Sample(CounterRandom random, Sex sex, double ageYears)
    {
        var male = sex == Sex.Male;
        var width = male ? random.Normal(62, 3.2) : random.Normal(55, 3.0);
        var bone = BoneQuality(random, sex, ageYears);
        var humerus = Humerus(random, width, bone);
        var radius = Radius(random, humerus, male, bone);
        var whole = new ElbowShape(humerus, Ulna(random, humerus, male, bone), radius, SoftTissue(random, male));
        return random.Chance(Math.Clamp((ageYears - 35) / 110, 0, 0.4)) ? Worn(whole, random) : whole;
    }

    /// <summary>
    /// A worn joint: narrow space, dense bone under it, spurs at coronoid and olecranon, a flared radial head, shallower
    /// fossae. Sizes and shares are estimates.
    /// </summary>
    private static ElbowShape Worn(ElbowShape s, CounterRandom r)
    {
        var wear = r.Uniform(0.2, 1);
        return s with
        {
            Humerus = s.Humerus with { Wear = wear, Septum = s.Humerus.Septum + (1.5 * wear) },
            Ulna = s.Ulna with
            {
                JointGap = Math.Max(0.6, s.Ulna.JointGap - (1.1 * wear)),
                CoronoidSpur = r.Chance(0.8) ? r.Uniform(1, 5) * wear : 0,
                OlecranonSpur = r.Chance(0.7) ? r.Uniform(1, 8) * wear : 0,
            },
            Radius = s.Radius with
            {
                JointGap = Math.Max(0.6, s.Radius.JointGap - (1.1 * wear)),
                HeadDiameter = s.Radius.HeadDiameter * (1 + (0.07 * wear * r.Uniform())),
                HeadTaper = s.Radius.HeadTaper + (0.08 * wear),
                HeadRounding = Math.Max(0.8, s.Radius.HeadRounding * (1 - (0.4 * wear))),
            },
        };
    }

    /// <summary>Factors of cortex thickness and bone volume fraction for age and sex.</summary>
    private static (double Cortex, double Spongy) BoneQuality(CounterRandom random, Sex sex, double age)
    {
        var decadesPast50 = Math.Max(age - 50, 0) / 10;
        var decadesPast25 = Math.Max(age - 25, 0) / 10;
        var cortex = (sex == Sex.Male ? 1 : 0.85) * (1 - ((sex == Sex.Male ? 0.05 : 0.085) * decadesPast50));
        var spongy = 1 - (0.04 * decadesPast25);
        return (
            Math.Max(0.45, cortex * random.Normal(1, 0.13)),
            Math.Max(0.4, spongy * random.Normal(1, 0.2)));
    }

    private static HumerusShape Humerus(CounterRandom r, double width, (double Cortex, double Spongy) bone)
    {
        var k = width / 63.9;
        var capitellum = (0.173 * width) + r.Normal(0, 0.9);
        var waist = (16.6 * k) + r.Normal(0, 1.6);
        var articular = (0.735 * width) + r.Normal(0, 1.5);
        return new HumerusShape
        {
            EpicondylarWidth = width,
            CapitellumRadius = capitellum,
            CapitellumTransverseRadius = Math.Clamp(1.2 * capitellum * r.Normal(1, 0.1), capitellum, 1.45 * capitellum),
            CapitellumZ = (0.335 * articular) + r.Normal(0, 0.8),
            CapitellumX = r.Normal(0.3, 0.7),
            CapitellumY = r.Normal(0, 0.6),
            MedialLipRadius = capitellum * r.Normal(1.18, 0.11, 0.98, 1.42),
            GrooveRadius = capitellum * r.Normal(0.84, 0.07, 0.66, 1.0),
            LateralLipRadius = (1.0 * capitellum) + r.Normal(0, 0.5),
            ArticularWidth = articular,
            WaistAp = waist,
            ShaftAp = waist * r.Normal(1.24, 0.07, 1.06, 1.42),
            DistalAp = waist * r.Normal(1.17, 0.06, 1.03, 1.32),
            ShaftMl = (20.3 * k) + r.Normal(0, 1.2),
            FlareMl = (50.6 * k) + r.Normal(0, 2.2),
            ForwardReach = r.Normal(10.8, 2.8, 4, 18) * k,
            AnteriorLineShare = r.Normal(0.525, 0.085),
            CondylarTiltDegrees = r.Normal(29, 7, 12, 48),
            WaistHeight = (15 * k) + r.Normal(0, 1.0),
            Bow = r.Normal(-0.0004, 0.0007),
            ShaftZ = (2.0 * k) + r.Normal(0, 1.5),
            DistalZ = (-3.5 * k) + r.Normal(0, 1.2),
            OlecranonFossaLength = (20.5 * k) + r.Normal(0, 1.8),
            OlecranonFossaWidth = (27 * k) + r.Normal(0, 2.5),
            OlecranonFossaHeight = (17.5 * k) + r.Normal(0, 1.0),
            CoronoidFossaLength = (13 * k) + r.Normal(0, 1.4),
            CoronoidFossaWidth = (15 * k) + r.Normal(0, 1.8),
            RadialFossaDepth = r.Uniform(1.0, 2.5) * k,
            Septum = r.Chance(0.12) ? r.Uniform(-1.2, 0) : r.Normal(1.6, 0.7, 0.3, 4),
            MedialEpicondyleReach = (35.5 * k) + r.Normal(0, 1.2),
            MedialEpicondyleHeight = (8.5 * k) + r.Normal(0, 1.2),
            LateralEpicondyleReach = (28.4 * k) + r.Normal(0, 1.0),
            LateralEpicondyleHeight = (8 * k) + r.Normal(0, 1.2),
            CortexShaft = 4.6 * k * bone.Cortex,
            CortexDistal = Math.Max(0.5, 1.15 * bone.Cortex * r.Normal(1, 0.1)),
            SpongyDistal = 0.17 * bone.Spongy,
            SpongyShaft = 0.03 * bone.Spongy,
        };
    }

    private static UlnaShape Ulna(CounterRandom r, HumerusShape h, bool male, (double Cortex, double Spongy) bone)
    {
        var scale = (0.5 * h.GrooveRadius / 8.45) + (0.5 * h.EpicondylarWidth / 60);
        return new UlnaShape
        {
            Scale = scale,
            JointGap = r.Normal(2.3, 0.7, 1.0, 4.0),
            CoronoidHeight = ((male ? 16 : 14.2) * r.Normal(1, 0.1)) + 0,
            OlecranonReach = 12.5 * scale * r.Normal(1, 0.06),
            Thickness = 17.5 * scale * r.Normal(1, 0.06),
            ShaftRadius = 7.4 * scale * r.Normal(1, 0.07),
            ValgusDegrees = (male ? 9.5 : 11.5) + r.Normal(0, 3.7),
            DorsalAngleDegrees = r.Normal(6, 2.5),
            MiddleZ = -5.5 * scale * r.Normal(1, 0.15),
            Flattening = r.Normal(0.93, 0.06, 0.8, 1.1),
            Length = (male ? 262 : 238) + r.Normal(0, 12),
            CortexShaft = 3.9 * scale * bone.Cortex,
            CortexJoint = Math.Max(0.5, 1.1 * bone.Cortex * r.Normal(1, 0.1)),
            SpongyJoint = 0.21 * bone.Spongy,
            SpongyShaft = 0.035 * bone.Spongy,
        };
    }

    private static RadiusShape Radius(CounterRandom r, HumerusShape h, bool male, (double Cortex, double Spongy) bone)
    {
        var head = (2.2 * h.CapitellumRadius) + r.Normal(0, 0.8);
        return new RadiusShape
        {
            HeadDiameter = head,
            HeadRoundness = r.Normal(0.94, 0.02, 0.88, 1),
            HeadHeight = 0.46 * head * r.Normal(1, 0.1),
            HeadTaper = r.Uniform(0.06, 0.2),
            HeadRounding = r.Uniform(1.2, 3.0),
            DishDepth = r.Normal(1.8, 0.4, 0.8, 2.8),
            JointGap = r.Normal(2.2, 0.7, 0.9, 4.0),
            NeckDiameter = 0.635 * head * r.Normal(1, 0.055),
            TuberosityDistance = head / 0.65 * r.Normal(1, 0.05),
            TuberosityHeight = r.Normal(4.2, 1.0, 1.5, 6.5) * head / 23,
            ShaftDiameter = 0.6 * head * r.Normal(1, 0.07),
            NeckShaftDegrees = r.Normal(5.5, 2.5, 0, 13),
            HeadForward = r.Normal(0, 0.05) * head,
            HeadLateral = r.Normal(0.06, 0.045) * head,
            Length = (male ? 245 : 222) + r.Normal(0, 12),
            CortexShaft = 2.9 * head / 23 * bone.Cortex,
            CortexJoint = Math.Max(0.4, 0.95 * bone.Cortex * r.Normal(1, 0.1)),
            SpongyJoint = 0.16 * bone.Spongy,
            SpongyShaft = 0.035 * bone.Spongy,
        };
    }

    private static SoftTissueShape SoftTissue(CounterRandom r, bool male)
    {
        var arm = (male ? 36.5 : 33.5) * r.Normal(1, 0.11);
        var fat = male ? r.Normal(4, 2, 1, 12) : r.Normal(7.5, 3, 2, 18);
        var cast = r.Chance(0.1);
        return new SoftTissueShape
        {
            ArmRadiusJoint = arm * r.Uniform(0.84, 0.96),
            ArmRadiusUpper = arm * r.Uniform(1.12, 1.35),
            ForearmRadius = arm * r.Uniform(0.95, 1.1),
            WristRadius = arm * r.Uniform(0.62, 0.75),
            Flattening = r.Uniform(0.82, 0.98),
            Skin = r.Uniform(1.1, 1.8),
            FatLayer = fat,
            Marbling = r.Uniform(0.1, 0.9),
            OlecranonCover = r.Uniform(3, 8) + (0.2 * fat),
            AnteriorPadLift = r.Uniform(0, 2.5),
            PosteriorPadLift = -1,
            AnteriorPadThickness = r.Uniform(2.5, 5),
            AnteriorPadLength = r.Uniform(19, 30),
            CastThickness = cast ? r.Uniform(2, 8) : 0,
            CastPadding = r.Uniform(2, 9),
            CastIsSlab = r.Chance(0.6),
            CastMesh = r.Uniform(0, 0.25),
        };
    }
}
