using ElbowAssist.Anatomy;
using ElbowAssist.Geometry;
using ElbowAssist.Phantom.Rendering.Field;

namespace ElbowAssist.Phantom.Pose;

/// <summary>
/// A point source, the plane through the joint square to the beam, and the film on it. The plane has axes right and
/// down, millimetres from the joint centre.
/// </summary>
internal sealed class FilmCamera
{
    private readonly Vec3 beam;
    private readonly Vec3 right;
    private readonly Vec3 down;
    private readonly Vec3 source;

    public FilmCamera(ElbowPose pose, View view)
    {
        Pose = pose;
        (beam, right, down) = Axes(pose, view);
        var distance = pose.SourceDetectorMillimetres - pose.ObjectDetectorMillimetres;
        source = (beam * (float)-distance) + (right * (float)pose.CentralRayX) + (down * (float)pose.CentralRayY);
        TrueBeam = view == View.Lateral ? new Vec3(0, 0, 1) : new Vec3(1, 0, 0);
    }

    public ElbowPose Pose { get; }

    /// <summary>Direction of the central ray, square to the film.</summary>
    public Vec3 Beam => beam;

    /// <summary>The beam of the true view, either way round.</summary>
    public Vec3 TrueBeam { get; }

    /// <summary>Angle between the beam and the beam of the true view.</summary>
    public double ViewErrorDegrees => Math.Acos(Math.Min(1, Math.Abs((double)beam.Dot(TrueBeam)))) * 180 / Math.PI;

    /// <summary>Magnification of the detector against the plane of the joint.</summary>
    public double Magnification =>
        Pose.SourceDetectorMillimetres / (Pose.SourceDetectorMillimetres - Pose.ObjectDetectorMillimetres);

    /// <summary>Unit vector along the ray that passes a point.</summary>
    public Vec3 RayThrough(Vec3 p) => (p - source).Unit;

    /// <summary>Projection of a point to the plane of the joint, millimetres.</summary>
    public Point ToPlane(Vec3 p)
    {
        var q = p - source;
        var depth = q.Dot(beam);
        var distance = -source.Dot(beam);
        var onPlane = source + (q * (distance / depth));
        return new Point(onPlane.Dot(right), onPlane.Dot(down));
    }

    /// <summary>The point of the plane of the joint at plane coordinates.</summary>
    public Vec3 FromPlane(Point p) => (right * (float)p.X) + (down * (float)p.Y);

    /// <summary>Projection of a direction at the joint to the plane, not of unit length.</summary>
    public Vector DirectionToPlane(Vec3 direction) => new(direction.Dot(right), direction.Dot(down));

    /// <summary>The camera of the kernels for a placement.</summary>
    public CameraGeometry Geometry(FilmPlacement placement, float halfDepth)
    {
        var filmToPlane = placement.PlaneToFilm.Inverse;
        var stepX = filmToPlane.Apply(new Vector(1, 0));
        var stepY = filmToPlane.Apply(new Vector(0, 1));
        return new CameraGeometry
        {
            Source = source,
            Corner = FromPlane(filmToPlane.Apply(new Point(0, 0))),
            StepX = FromPlane(new Point(stepX.X, stepX.Y)),
            StepY = FromPlane(new Point(stepY.X, stepY.Y)),
            HalfDepth = halfDepth,
        };
    }

    private static (Vec3 Beam, Vec3 Right, Vec3 Down) Axes(ElbowPose pose, View view)
    {
        var b = view == View.Lateral ? new Vec3(0, 0, -1) : new Vec3(-1, 0, 0);
        if (pose.FromBehind)
        {
            b = -b;
        }

        var d = new Vec3(0, -1, 0);
        var r = d.Cross(b);
        var tilt = Frame.Turn(r, pose.TiltDegrees, default);
        var axial = Frame.Turn(new Vec3(0, 1, 0), pose.AxialRotationDegrees, default);
        var turn = Frame.Compose(in axial, in tilt);
        return (
            Frame.DirectionToOuter(in turn, b), Frame.DirectionToOuter(in turn, r), Frame.DirectionToOuter(in turn, d));
    }
}
