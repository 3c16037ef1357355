using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Phantom.Mesh;
using ElbowAssist.Phantom.Mesh.Registration;
using ElbowAssist.Phantom.Mesh.Rendering;
using ElbowAssist.Phantom.Mesh.Surfaces;
using ElbowAssist.Phantom.Pose;
using ElbowAssist.Phantom.Rendering;
using ElbowAssist.Phantom.Rendering.Field;
using ElbowAssist.Phantom.Shape;
using ElbowAssist.Phantom.Truth;

namespace ElbowAssist.Phantom.Tests.Mesh;

/// <summary>A parametric elbow written to STL files and read again is the same elbow.</summary>
public sealed class MeshElbowTests(MeshElbowTests.ExportedElbow exported) : IClassFixture<MeshElbowTests.ExportedElbow>
{
    private const int Size = 96;
    private static readonly SimulationOptions Options = new() { FromAgeYears = 25, ToAgeYears = 40, InjuredShare = 0, Adequacy = Adequacy.Mixed };

    /// <summary>The exported bones in the frames they came from: what is left is the triangles' and the grid's.</summary>
    [Theory]
    [InlineData(View.Lateral)]
    [InlineData(View.Ap)]
    public void InItsOwnFrames_ItGivesTheSameFilm_AndTheSameLandmarks(View view)
    {
        var plain = FilmSetup.OfCrop(exported.Elbow, view, Size, Options);
        var meshes = FilmSetup.OfCrop(exported.Elbow with { Meshes = exported.InTheirFrames }, view, Size, Options).With(plain.Placement);
        var (expected, found) = (plain.Truth(), meshes.Truth());

        // W is found on the sections, in steps of half a millimetre of height; tips by what reaches farthest.
        Assert.Equal(expected.UnitWMillimetres, found.UnitWMillimetres, 0.25);
        Same(expected, found, contour: 0.4, point: 2.0);
        PathImage a = plain.Render(), b = meshes.Render();
        double whole = 0, bone = 0, most = 0;
        for (var i = 0; i < a.Bone.Length; i++)
        {
            whole += Math.Abs(a.Soft[i] + a.Bone[i] + a.Fat[i] - b.Soft[i] - b.Bone[i] - b.Fat[i]);
            bone += Math.Abs(a.Bone[i] - b.Bone[i]);
            most += a.Bone[i];
        }

        // Textures are sampled at other places of each ray: single pixels differ, the mean over a film does not.
        Assert.Equal(0, whole / a.Bone.Length, 0.01);
        Assert.InRange(bone / most, 0, 0.1);

        // Parametric distances are kept up to 6 % short, so that their shells are that much thicker than those of a mesh.
        Assert.InRange(b.Bone.Sum(v => (double)v) / most, 0.92, 1.01);
    }

    /// <summary>Nothing but the assembled files is known: pose and shape are fitted anew.</summary>
    [Fact]
    public void Registered_ItLiesOnTheParametricElbow_AndKeepsTheLandmarks()
    {
        // The prior holds the parameters of this elbow, which are not the mean ones, a little back.
        Assert.All(exported.Registered.Distances, d => Assert.True(
            d.Mean < 0.4 && d.Percentile95 < 1.2, FormattableString.Invariant($"{d.Bone}: {d.Mean:F2} mm on average, {d.Percentile95:F2} over 95 %.")));

        // No landmark can lie nearer than the surfaces do, and some of those are up to 4 mm apart.
        foreach (var view in new[] { View.Lateral, View.Ap })
        {
            var elbow = exported.Elbow with { Shape = exported.Registered.Shape with { Soft = exported.Elbow.Shape.Soft } };
            var plain = FilmSetup.OfCrop(elbow, view, Size, Options);
            var meshes = FilmSetup.OfCrop(elbow with { Meshes = exported.Registered.Meshes }, view, Size, Options).With(plain.Placement);
            Same(plain.Truth(), meshes.Truth(), contour: 1.6, point: 5);
        }
    }

    [Fact]
    public void AnElbowTwiceAsLarge_IsTwiceAsThick()
    {
        var elbow = exported.Elbow with { Meshes = exported.InTheirFrames };
        var once = FilmSetup.OfCrop(elbow, View.Lateral, 24, Options);
        var twice = FilmSetup.OfCrop(elbow with { Size = 2 }, View.Lateral, 24, Options);
        Assert.Equal(2 * once.Truth().UnitWMillimetres, twice.Truth().UnitWMillimetres, 3);
        Assert.Equal(2 * once.Truth().ObjectPixelMillimetres, twice.Truth().ObjectPixelMillimetres, 0.4);

        // The source stays where it was: in units of the elbow it has come closer, and the rays run a little more aslant.
        Assert.Equal(once.Truth().SourceDetectorMillimetres, twice.Truth().SourceDetectorMillimetres, 6);
        Assert.Equal(2, twice.Render().Bone.Sum() / once.Render().Bone.Sum(), 0.15);
    }

    [Fact]
    public void ASampledElbow_IsFixedByItsSeed_AndVariesInSize()
    {
        var first = exported.Registered.Sample(5, Options);
        Assert.Equal(first.Size, exported.Registered.Sample(5, Options).Size);
        Assert.NotEqual(first.Size, exported.Registered.Sample(6, Options).Size);
        Assert.Empty(first.Injuries);
        var film = new FilmSimulator().Simulate(first, View.Lateral, Options, 64);
        Assert.Equal(film.Pixels, new FilmSimulator().Simulate(exported.Registered.Sample(5, Options), View.Lateral, Options, 64).Pixels);
    }

    private static void Same(FilmTruth expected, FilmTruth found, double contour, double point)
    {
        var compared = 0;
        foreach (var (a, b) in expected.Landmarks.Zip(found.Landmarks).Where(p => p.First.Position is not null && p.Second.Position is not null))
        {
            var apart = (b.Position!.Value - a.Position!.Value) * expected.ObjectPixelMillimetres;
            var distance = a.Tangent is { } tangent ? Math.Abs(apart.Dot(tangent.Perpendicular)) : apart.Length;

            // Where capitellum or lip run into the rest of the bone, their outline on a mesh follows the fillet between them.
            var isPart = a.Name.StartsWith("capitellum", StringComparison.Ordinal) || a.Name.StartsWith("trochlea", StringComparison.Ordinal);

            // The olecranon ends in a rounded edge of about 10 mm: what reaches farthest need not lie in its middle.
            var allowed = a.Tangent is not null ? (isPart ? contour + 0.6 : contour) : a.Name == LandmarkNames.UlnaOlecranon ? point + 2.5 : point;
            Assert.True(distance < allowed, FormattableString.Invariant($"{a.Name} lies {distance:F2} mm off."));
            compared++;
        }

        Assert.InRange(compared, 16, int.MaxValue);
    }

    /// <summary>One parametric elbow as three STL files, assembled at 20° of flexion, turned and shifted as files come.</summary>
    public sealed class ExportedElbow
    {
        private const float Step = 1.2f;

        public ExportedElbow()
        {
            Elbow = Simulation.Sample(4, Options);
            var g = ElbowBuilder.Build(Elbow, ElbowPose.Straight with { FlexionDegrees = 20 }, 0).Geometry;
            var humerus = Read(p => MathF.Max(HumerusField.Evaluate(in g.Humerus, p), p.Y - 140), new Vec3(-45, -25, -50), new Vec3(30, 145, 45));
            var ulna = Read(p => MathF.Max(UlnaField.EvaluateLocal(in g.Ulna, p), p.X - 150), new Vec3(-30, -50, -35), new Vec3(155, 25, 25));
            var radius = Read(p => MathF.Max(RadiusField.EvaluateLocal(in g.Radius, p), p.X - 110), new Vec3(-8, -25, -35), new Vec3(115, 25, 40));
            InTheirFrames = new MeshBones(humerus, ulna, radius, Elbow.Shape);
            var place = Frame.Compose(Frame.Turn(new Vec3(1, 2, -0.5f), 77, new Vec3(30, -200, 900)), Frame.Identity);
            Vec3 Placed(Vec3 p) => Frame.ToOuter(in place, p);
            Registered = MeshElbow.Of(new AssembledBones(
                humerus.Moved(Placed),
                ulna.Moved(p => Placed(Frame.ToOuter(in g.Ulna.Forearm, p))),
                radius.Moved(p => Placed(Frame.ToOuter(in g.Radius.Bone, p)))));
        }

        internal ElbowCase Elbow { get; }

        internal MeshBones InTheirFrames { get; }

        internal MeshElbow Registered { get; }

        private static TriangleMesh Read(Surface surface, Vec3 least, Vec3 most) =>
            StlReader.Read(StlFiles.Binary(Isosurface.Of(surface, least, most, Step)), "bone.stl");
    }
}
