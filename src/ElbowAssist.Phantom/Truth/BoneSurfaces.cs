using ElbowAssist.Phantom.Rendering.Field;
using ElbowAssist.Phantom.Shape;

namespace ElbowAssist.Phantom.Truth;

/// <summary>The surfaces of one posed elbow that landmarks lie on, and points inside them.</summary>
internal sealed class BoneSurfaces(PosedElbow elbow)
{
    /// <summary>How far a mesh may lie outside the part of the parametric elbow that names it.</summary>
    private const float MeshReach = 1.5f;

    /// <summary>Length in mm over which the metaphysis rounds from its physis into its side.</summary>
    private const float RoundedCorner = 2f;

    private readonly ElbowGeometry g = elbow.Geometry;

    public AnatomicalPoints Points => elbow.Points;

    public ElbowGeometry Geometry => g;

    public float Humerus(Vec3 p) => Bone(0, p);

    public float Ulna(Vec3 p) => Bone(1, p);

    public float Radius(Vec3 p) => Bone(2, p);

    /// <summary>True if the bones are surfaces from files.</summary>
    public bool AreMeshes => elbow.Meshes is not null;

    /// <summary>True while the capitellum is a nucleus of its own.</summary>
    public bool CapitellumIsNucleus => g.Humerus.Growth.Stage == 1;

    /// <summary>False before the nucleus appears.</summary>
    public bool CapitellumExists => !CapitellumIsNucleus || g.Humerus.Growth.Capitellum.Exists;

    /// <summary>True once the trochlea is part of the joint block.</summary>
    public bool TrochleaExists => g.Humerus.Growth.Stage != 1;

    /// <summary>The capitellum, or its nucleus.</summary>
    public float Capitellum(Vec3 p)
    {
        var q = Frame.ToLocal(CapitellumFrame, p);
        return CapitellumIsNucleus
            ? Nucleus.To(in g.Humerus.Growth.Capitellum, q)
            : PartOfHumerus(p, Distance.ToOval(in g.Humerus.Capitellum, q));
    }

    /// <summary>Where the capitellum has gone with a fragment.</summary>
    private Frame CapitellumFrame
    {
        get
        {
            var b = g.Humerus.Break;
            var front = g.Humerus.Capitellum.Centre + new Vec3(0.8f * g.Humerus.Capitellum.Radii.X, 0, 0);
            return b.Active != 0 && BreakGeometry.Region(in b, front, 77u) < 0 ? b.Fragment : Frame.Identity;
        }
    }

    /// <summary>The bone whose edge the capitellar outline is: all of the humerus, or the nucleus alone.</summary>
    public Surface CapitellumBone => CapitellumIsNucleus ? Capitellum : Humerus;

    /// <summary>The medial part of the trochlea, lip to groove.</summary>
    public float MedialLip(Vec3 p) => PartOfHumerus(p, MathF.Max(
        HumerusField.Trochlea(in g.Humerus.Trochlea, p, 0), p.Z - g.Humerus.Trochlea.GrooveZ));

    public Vec3 CapitellumCentre => Frame.ToOuter(CapitellumFrame, CapitellumIsNucleus
        ? Frame.ToOuter(g.Humerus.Growth.Capitellum.Frame, MiddleOf(g.Humerus.Growth.Capitellum))
        : g.Humerus.Capitellum.Centre);

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

    /// <summary>True if the head, or a disc nearly as wide, is bone.</summary>
    public bool HeadExists => g.Radius.Growth.Open == 0 || g.Radius.Growth.DiscRadius > 0.85f * g.Radius.HeadY;

    /// <summary>The rim of the articular surface of the radial head, or of its disc, at an angle about its axis.</summary>
    public Vec3 HeadRim(float angle)
    {
        var growth = g.Radius.Growth;
        var edge = growth.Open != 0 ? 0.4f : 0.25f * g.Radius.HeadRounding;
        var top = growth.Open != 0 ? growth.DiscMiddle - growth.DiscHalf : 0f;
        var (y, z) = growth.Open != 0 ? (growth.DiscRadius, growth.DiscRadius) : (g.Radius.HeadY, g.Radius.HeadZ);
        var p = new Vec3(top + edge, (y - edge) * MathF.Cos(angle), (z - edge) * MathF.Sin(angle));
        if (g.Radius.Break.Active != 0)
        {
            p = BreakGeometry.Region(g.Radius.Break, p, 79u) < 0 ? Frame.ToOuter(g.Radius.Break.Fragment, p) : p;
        }

        if (elbow.Meshes is { } meshes)
        {
            var inside = new Vec3(0.5f * g.Radius.HeadHeight, 0, 0);
            p = Silhouette.Rim(meshes.Surface(2).At, inside, (p - inside).Unit, 20) ?? p;
        }

        return Frame.ToOuter(in g.Radius.Bone, p);
    }

    /// <summary>Tip of the medial epicondyle where it is bone; null before its nucleus appears.</summary>
    public Vec3? MedialEpicondyle => g.Humerus.Growth.EpicondyleOpen == 0
        ? Points.MedialEpicondyle
        : NucleusTip(g.Humerus.Growth.MedialEpicondyle, new Vec3(-0.15f, -0.2f, -1));

    /// <summary>Tip of the lateral epicondyle where it is bone.</summary>
    public Vec3? LateralEpicondyle => g.Humerus.Growth.Stage != 1
        ? Points.LateralEpicondyle
        : NucleusTip(g.Humerus.Growth.LateralEpicondyle, new Vec3(-0.1f, 0, 1));

    /// <summary>Tip of the olecranon where it is bone.</summary>
    public Vec3? Olecranon
    {
        get
        {
            if (g.Ulna.Growth.Open == 0)
            {
                return Points.OlecranonTip;
            }

            return NucleusTip(g.Ulna.Growth.First, new Vec3(-1, 0.35f, 0)) is { } p ? Frame.ToOuter(in g.Ulna.Forearm, p) : null;
        }
    }

    /// <summary>
    /// Ends of the metaphyseal border of the lateral condylar physis: in the sagittal plane through the capitellum
    /// (anterior, posterior) and along it across (lateral, medial). Null once it is closed. From front to back the physis
    /// runs distally, so the border that an AP film shows is its posterior edge: the ends across lie on it, the lateral
    /// one where the edge is still straight and has not yet rounded into the side of the bone.
    /// </summary>
    public (Vec3? Anterior, Vec3? Posterior, Vec3? Lateral, Vec3? Medial) Physis()
    {
        var growth = g.Humerus.Growth;
        if (growth.Stage == 0)
        {
            return default;
        }

        var n = growth.LateralNormal;
        var centre = g.Humerus.Capitellum.Centre;
        var start = centre - (n * (n.Dot(centre) - growth.LateralOffset + 0.4f));
        var along = n.Cross(new Vec3(0, 0, 1)).Unit;
        along = along.X < 0 ? -along : along;
        var lateral = new Vec3(0, -n.Z, n.Y).Unit;
        lateral = lateral.Z < 0 ? -lateral : lateral;
        var m = growth.MedialNormal;
        var toJunction = (growth.MedialOffset - m.Dot(start) - 0.4f) / m.Dot(lateral);
        var posterior = Silhouette.Rim(Humerus, start, -along, 25);
        var edge = posterior ?? start;
        var side = Silhouette.Rim(Humerus, start, lateral, 35);
        return (
            Silhouette.Rim(Humerus, start, along, 25),
            posterior,
            side is { } s ? s + (edge - start) - (lateral * RoundedCorner) : null,
            edge + (lateral * toJunction));
    }

    private float Bone(int bone, Vec3 p) => elbow.Meshes?.Distance(in g, bone, p) ?? RayIntegrator.BoneDistance(in g, bone, p);

    /// <summary>A part of the humerus; of a mesh, what lies within reach of the part that was fitted to it.</summary>
    private float PartOfHumerus(Vec3 p, float part) => elbow.Meshes is null ? part : MathF.Max(Humerus(p), part - MeshReach);

    private static Vec3? NucleusTip(Nucleus nucleus, Vec3 direction) => nucleus.Exists
        ? Silhouette.Rim(p => Nucleus.To(in nucleus, p), Frame.ToOuter(in nucleus.Frame, MiddleOf(nucleus)), direction.Unit, 20)
        : null;

    private static Vec3 MiddleOf(Nucleus n) => new(0.5f * (MathF.Max(n.Flat, -n.Oval.Radii.X) + n.Oval.Radii.X), 0, 0);

    private static Vec3 Between(Cone cone, float x)
    {
        var t = (x - cone.From.X) / (cone.To.X - cone.From.X);
        return cone.From + ((cone.To - cone.From) * t);
    }
}
