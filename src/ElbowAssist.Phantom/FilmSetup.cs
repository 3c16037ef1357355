using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Geometry;
using ElbowAssist.Phantom.Pose;
using ElbowAssist.Phantom.Rendering.Field;
using ElbowAssist.Phantom.Sampling;
using ElbowAssist.Phantom.Shape;
using ElbowAssist.Phantom.Truth;

namespace ElbowAssist.Phantom;

/// <summary>A posed elbow in front of a film: everything before the rays are walked.</summary>
internal sealed class FilmSetup
{
    private readonly ElbowCase elbow;
    private readonly View view;
    private readonly PosedElbow posed;
    private readonly FilmCamera camera;
    private readonly FilmPlacement placement;

    private FilmSetup(ElbowCase elbow, View view, PosedElbow posed, FilmCamera camera, FilmPlacement placement)
    {
        (this.elbow, this.view, this.posed, this.camera, this.placement) = (elbow, view, posed, camera, placement);
        var geometry = posed.Geometry;
        geometry.Camera = camera.Geometry(placement, HalfDepth(elbow.Shape));
        Geometry = geometry;
    }

    public ElbowGeometry Geometry { get; }

    public FilmPlacement Placement => placement;

    /// <summary>A film as it may come: field of 95 to 290 mm for an adult, the elbow anywhere on it.</summary>
    public static FilmSetup OfFilm(ElbowCase elbow, View view, int size, SimulationOptions options)
    {
        var (posed, camera, random) = Pose(elbow, view, options);
        var scale = elbow.Shape.Humerus.EpicondylarWidth / 60;
        var field = (random.Chance(0.7) ? random.Uniform(120, 200) : random.Uniform(95, 290)) * scale;
        var pixel = field / size;
        var points = LocatorPoints.Plane(posed, camera, view);
        var pull = random.Uniform(0.1, 1);
        var centre = new Vector((points.Shaft.X + points.Forearm.X) / 3, (points.Shaft.Y + points.Forearm.Y) / 3) * pull;
        var shift = new Vector(random.Uniform(-0.3, 0.3), random.Uniform(-0.3, 0.3)) * (field * (1 - (0.6 * pull)));
        var turn = options.AnyTurn ? (random.Chance(0.4) ? random.Uniform(-180, 180) : random.Normal(0, 35)) : random.Normal(0, 6);
        var mirror = (elbow.Side == Side.Left) ^ (options.AnyMirror && random.Chance(0.5));
        var at = new FilmPlacement(size, size, pixel, turn, mirror, default);
        var offset = FilmCamera.ToPixel(at, shift - centre);
        return new FilmSetup(elbow, view, posed, camera, at with { Joint = new Point(size / 2.0, size / 2.0) + offset });
    }

    /// <summary>A disturbed canonical crop, as the landmark models are trained on.</summary>
    public static FilmSetup OfCrop(ElbowCase elbow, View view, int size, SimulationOptions options)
    {
        var (posed, camera, random) = Pose(elbow, view, options);
        var points = LocatorPoints.Plane(posed, camera, view);
        var exact = CanonicalPose.Of(points.Shaft, points.Joint, points.Forearm, points.Mark, posed.Points.UnitW, size)
            ?? throw new InvalidOperationException("A simulated shaft has no direction on the film.");
        var crop = exact.Disturbed(
            random.Uniform(-35, 35),
            random.Uniform(0.8, 1.25),
            new Vector(random.Uniform(-0.12, 0.12), random.Uniform(-0.12, 0.12)),
            random.Chance(0.5));
        return new FilmSetup(elbow, view, posed, camera, PlacementOf(crop, size));
    }

    public FilmTruth Truth()
    {
        var points = LocatorPoints.Plane(posed, camera, view);
        var landmarks = new LandmarkTruth(posed, camera, placement).Of(view);
        return new FilmTruth(
            elbow.Seed,
            view,
            elbow.Side,
            elbow.AgeMonths,
            elbow.Sex,
            elbow.Injuries,
            landmarks,
            new Locator(Pixel(points.Shaft), Pixel(points.Joint), Pixel(points.Forearm), Pixel(points.Mark)),
            camera.ViewErrorDegrees,
            camera.Pose.FlexionDegrees,
            posed.Points.UnitW,
            placement.PixelMillimetres,
            placement.PixelMillimetres * camera.Magnification,
            camera.Pose.SourceDetectorMillimetres);
    }

    private Point Pixel(Point plane) => FilmCamera.ToPixel(placement, plane);

    private static (PosedElbow Posed, FilmCamera Camera, CounterRandom Random) Pose(ElbowCase elbow, View view, SimulationOptions options)
    {
        var random = Simulation.Stream(elbow, view, 0);
        var pose = PoseSampler.Sample(random, view, options.Adequacy);
        var posed = ElbowBuilder.Build(elbow.Shape, pose, (uint)(elbow.Seed ^ (elbow.Seed >> 32)));
        return (posed, new FilmCamera(pose, view), random);
    }

    /// <summary>The crop's similarity as a placement of the joint plane.</summary>
    private static FilmPlacement PlacementOf(CanonicalPose crop, int size)
    {
        var x = crop.ToCrop(new Vector(1, 0));
        var y = crop.ToCrop(new Vector(0, 1));
        var mirror = x.Cross(y) < 0;
        var turn = mirror ? Math.Atan2(-x.Y, -x.X) : Math.Atan2(x.Y, x.X);
        return new FilmPlacement(size, size, crop.Scale, turn * 180 / Math.PI, mirror, crop.ToCrop(new Point(0, 0)));
    }

    private static float HalfDepth(ElbowShape shape) =>
        (float)((Math.Max(shape.Soft.ArmRadiusUpper, shape.Soft.ForearmRadius) * 1.15) + 22 + shape.Soft.CastThickness + shape.Soft.CastPadding);
}
