using ElbowAssist.Phantom.Rendering.Field;
using ElbowAssist.Phantom.Shape;

namespace ElbowAssist.Phantom.Truth;

/// <summary>The surfaces of one posed elbow that landmarks lie on, and points inside them.</summary>
internal sealed class BoneSurfaces(PosedElbow elbow)
{
    private readonly ElbowGeometry g = elbow.Geometry;

    public AnatomicalPoints Points => elbow.Points;

    public ElbowGeometry Geometry => g;

    public float Humerus(Vec3 p) => RayIntegrator.BoneDistance(in g, 0, p);

    public float Ulna(Vec3 p) => RayIntegrator.BoneDistance(in g, 1, p);

    public float Radius(Vec3 p) => RayIntegrator.BoneDistance(in g, 2, p);

    public float Capitellum(Vec3 p) => Distance.ToOval(in g.Humerus.Capitellum, p);

    /// <summary>The medial part of the trochlea, lip to groove.</summary>
    public float MedialLip(Vec3 p) => MathF.Max(
        HumerusField.Trochlea(in g.Humerus.Trochlea, p, 0), p.Z - g.Humerus.Trochlea.GrooveZ);

    public Vec3 CapitellumCentre => g.Humerus.Capitellum.Centre;

    public Vec3 MedialLipCentre => new(0, 0, g.Humerus.Trochlea.MedialLipZ);

    /// <summary>Middle of the humeral shaft at a height above the fossa roof.</summary>
    public Vec3 ShaftMiddle(float aboveRoof)
    {
        var p = HumerusField.Axis(in g.Humerus, Points.FossaRoof.Y + aboveRoof);
        var shaft = Points.Shaft;
        return Frame.ToOuter(in shaft, p);
    }

    /// <summary>Middle of the ulna at a distance along the forearm, in the frame of the joint.</summary>
    public Vec3 UlnaMiddle(float x)
    {
        var bend = g.Ulna.Shaft1.To;
        var p = x < bend.X ? Between(g.Ulna.Shaft1, x) : x < g.Ulna.Shaft2.To.X ? Between(g.Ulna.Shaft2, x) : Between(g.Ulna.Shaft3, x);
        return Frame.ToOuter(in g.Ulna.Forearm, p);
    }

    /// <summary>Middle of the radius at a distance below the articular surface.</summary>
    public Vec3 RadiusMiddle(float x)
    {
        var p = x < g.Radius.Shaft1.From.X ? new Vec3(x, 0, 0) : x < g.Radius.Shaft1.To.X ? Between(g.Radius.Shaft1, x) : Between(g.Radius.Shaft2, x);
        return Frame.ToOuter(in g.Radius.Bone, p);
    }

    /// <summary>The rim of the articular surface of the radial head at an angle about its axis.</summary>
    public Vec3 HeadRim(float angle)
    {
        var edge = 0.25f * g.Radius.HeadRounding;
        return Frame.ToOuter(in g.Radius.Bone, new Vec3(
            edge, (g.Radius.HeadY - edge) * MathF.Cos(angle), (g.Radius.HeadZ - edge) * MathF.Sin(angle)));
    }

    private static Vec3 Between(Cone cone, float x)
    {
        var t = (x - cone.From.X) / (cone.To.X - cone.From.X);
        return cone.From + ((cone.To - cone.From) * t);
    }
}
