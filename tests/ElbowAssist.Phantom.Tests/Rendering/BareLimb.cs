using ElbowAssist.Phantom.Rendering.Field;

namespace ElbowAssist.Phantom.Tests.Rendering;

/// <summary>A long limb of radius 40 mm along Y without bones, in a beam of a millimetre to the pixel.</summary>
internal static class BareLimb
{
    public static ElbowGeometry SeenFrom(Vec3 source)
    {
        var limb = Cone.Of(new Vec3(0, -500, 0), 40, new Vec3(0, 500, 0), 40);
        var away = Cone.Of(new Vec3(5000, 0, 0), 1, new Vec3(5000, 1, 0), 1);
        return new ElbowGeometry
        {
            Humerus = new HumerusGeometry { ShaftBound = away, JointBound = away },
            Ulna = new UlnaGeometry { Forearm = Frame.Identity, ShaftBound = away, JointBound = away },
            Radius = new RadiusGeometry { Bone = Frame.Identity, Bound1 = away, Bound2 = away },
            Soft = new SoftTissueGeometry
            {
                Forearm = Frame.Identity,
                UpperArm = limb,
                Joint = away,
                OlecranonCover = away,
                ForearmProximal = away,
                ForearmDistal = away,
                Oval = 1,
                Blend = 1,
                Skin = 2,
                FatLayer = 5,
            },
            Camera = new CameraGeometry { Source = source, StepX = new Vec3(1, 0, 0), StepY = new Vec3(0, 1, 0), HalfDepth = 60 },
        };
    }
}
