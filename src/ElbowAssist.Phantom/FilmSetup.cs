using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Geometry;
using ElbowAssist.Phantom.Pose;
using ElbowAssist.Phantom.Rendering;
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

    /// <summary>Distance between pixels in the plane of the elbow, millimetres of this patient.</summary>
    public double PixelMillimetres => placement.PixelMillimetres * elbow.Size;

    /// <summary>The same elbow in the same beam, lying elsewhere on the film.</summary>
    public FilmSetup With(FilmPlacement other) => new(elbow, view, posed, camera, other);

    /// <summary>A film as it may come: field of 95 to 290 mm for an adult, the elbow anywhere on it.</summary>
    public static FilmSetup OfFilm(ElbowCase elbow, View view, int size, SimulationOptions options)
    {
        var (posed, camera, random) = Pose(elbow, view, options);
        var scale = elbow.Shape.Humerus.EpicondylarWidth / 60;
        var field = (random.Chance(0.7) ? random.Uniform(120, 200) : random.Uniform(95, 290)) * scale;
        var pixel = field / size;
        var points = LocatorTruth.Plane(posed, camera, view);
        var pull = random.Uniform(0.1, 1);
        var centre = new Vector((points.Shaft.X + points.Forearm.X) / 3, (points.Shaft.Y + points.Forearm.Y) / 3) * pull;
        var shift = new Vector(random.Uniform(-0.3, 0.3), random.Uniform(-0.3, 0.3)) * (field * (1 - (0.6 * pull)));
        var turn = options.AnyTurn ? (random.Chance(0.4) ? random.Uniform(-180, 180) : random.Normal(0, 35)) : random.Normal(0, 6);
        var mirror = (elbow.Side == Side.Left) ^ (options.AnyMirror && random.Chance(0.5));
        var mirrored = mirror ? new Similarity(-1, 0, default, true) : Similarity.Identity;
        var onto = mirrored.Then(Similarity.About(default, turn * Math.PI / 180, 1 / pixel));
        var middle = onto.Apply(centre - shift);
        var half = new Vector(size / 2.0, size / 2.0);
        return new FilmSetup(elbow, view, posed, camera, new FilmPlacement(size, size, onto with { Shift = half - middle }));
    }

    /// <summary>A film of a given pose with the joint in its middle, humerus upright, as the patient's own side shows.</summary>
    public static FilmSetup OfPose(ElbowCase elbow, View view, ElbowPose pose, int size)
    {
        const double FieldMillimetres = 130;
        var bones = ElbowBuilder.Build(elbow, pose, (uint)(elbow.Seed ^ (elbow.Seed >> 32)));
        var beam = new FilmCamera(pose.SeenBySize(elbow.Size), view);
        var pixel = FieldMillimetres * (elbow.Shape.Humerus.EpicondylarWidth / 60) / size;
        var joint = LocatorTruth.Plane(bones, beam, view).Joint;
        var mirrored = elbow.Side == Side.Left ? new Similarity(-1, 0, default, true) : Similarity.Identity;
        var onto = mirrored.Then(Similarity.About(default, 0, 1 / pixel));
        var middle = onto.Apply(joint);
        return new FilmSetup(elbow, view, bones, beam, new FilmPlacement(size, size, onto with { Shift = onto.Shift + (new Point(size / 2.0, size / 2.0) - middle) }));
    }

    /// <summary>A disturbed canonical crop, as the landmark models are trained on.</summary>
    public static FilmSetup OfCrop(ElbowCase elbow, View view, int size, SimulationOptions options)
    {
        var (posed, camera, random) = Pose(elbow, view, options);
        var points = LocatorTruth.Plane(posed, camera, view);
        var exact = CanonicalPose.FilmToCrop(points, posed.Points.UnitW)
            ?? throw new InvalidOperationException("A simulated shaft has no direction on the film.");
        var turn = random.Uniform(-35, 35) * Math.PI / 180;
        var side = random.Uniform(0.8, 1.25);
        var crop = exact.Then(Similarity.About(new Point(128, 128), turn, 1 / side));
        crop = random.Chance(0.5) ? crop.Then(new Similarity(-1, 0, new Vector(256, 0), true)) : crop;
        var shift = new Vector(random.Uniform(-0.12, 0.12), random.Uniform(-0.12, 0.12)) * CanonicalPose.CropSide;
        crop = crop with { Shift = crop.Shift + shift };
        var scaled = crop.Then(new Similarity(size / (double)CanonicalPose.CropSide, 0, default, false));
        return new FilmSetup(elbow, view, posed, camera, new FilmPlacement(size, size, scaled));
    }

    /// <summary>A film of a training seed: any age, any turn, either mirror image.</summary>
    public static FilmSetup ForTraining(ulong seed, View view, int size, bool crop)
    {
        var options = new SimulationOptions { AnyMirror = true, AnyTurn = true };
        var drawn = Simulation.Sample(seed, options);
        return crop ? OfCrop(drawn, view, size, options) : OfFilm(drawn, view, size, options);
    }

    /// <summary>A film that shows bones but no elbow: the joint lies well off it.</summary>
    public static FilmSetup NearMiss(ulong seed, int size)
    {
        var film = ForTraining(seed, View.Oblique, size, false);
        var random = Simulation.Stream(film.elbow, View.Unknown, 0);
        var field = size * film.placement.PixelMillimetres;
        var points = LocatorTruth.Plane(film.posed, film.camera, View.Oblique);
        var toward = (random.Chance(0.5) ? points.Shaft : points.Forearm) - points.Joint;
        var past = film.placement.PlaneToFilm.Apply(toward.Unit * ((0.75 * field) + random.Uniform(5, 40)));
        var joint = film.placement.PlaneToFilm.Apply(points.Joint);
        var onto = film.placement.PlaneToFilm;
        var shift = new Vector(size / 2.0, size / 2.0) - (new Vector(joint.X, joint.Y) + past);
        var moved = film.placement with { PlaneToFilm = onto with { Shift = onto.Shift + shift } };
        return new FilmSetup(film.elbow, View.Oblique, film.posed, film.camera, moved);
    }

    /// <summary>Walks the rays of every pixel.</summary>
    public PathImage Render()
    {
        var paths = FilmRenderer.Render(Geometry, placement.Width, placement.Height, posed.Meshes);
        return elbow.Size == 1 ? paths : paths.Lengthened((float)elbow.Size);
    }

    public FilmTruth Truth()
    {
        var points = LocatorTruth.Plane(posed, camera, view);
        var landmarks = new LandmarkTruth(posed, camera, placement).Of(view);
        return new FilmTruth(
            elbow.Seed,
            view,
            elbow.Side,
            elbow.AgeMonths,
            elbow.Sex,
            elbow.Injuries,
            landmarks,
            new LocatorPoints(Pixel(points.Shaft), Pixel(points.Joint), Pixel(points.Forearm), Pixel(points.Mark)),
            camera.ViewErrorDegrees,
            camera.Pose.FlexionDegrees,
            posed.Points.UnitW * elbow.Size,
            PixelMillimetres,
            PixelMillimetres * camera.Magnification,
            camera.Pose.SourceDetectorMillimetres * elbow.Size);
    }

    private Point Pixel(Point plane) => placement.PlaneToFilm.Apply(plane);

    private static (PosedElbow Posed, FilmCamera Camera, CounterRandom Random) Pose(ElbowCase elbow, View view, SimulationOptions options)
    {
        var random = Simulation.Stream(elbow, view, 0);
        var pose = PoseSampler.Sample(random, view, options.Adequacy);
        var bones = ElbowBuilder.Build(elbow, pose, (uint)(elbow.Seed ^ (elbow.Seed >> 32)));
        return (bones, new FilmCamera(pose.SeenBySize(elbow.Size), view), random);
    }

    private static float HalfDepth(ElbowShape shape) =>
        (float)((Math.Max(shape.Soft.ArmRadiusUpper, shape.Soft.ForearmRadius) * 1.15) + 22 + shape.Soft.CastThickness + shape.Soft.CastPadding);
}
