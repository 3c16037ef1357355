using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Geometry;
using ElbowAssist.Phantom.Pose;
using ElbowAssist.Phantom.Rendering;
using ElbowAssist.Phantom.Rendering.Field;
using ElbowAssist.Phantom.Truth;

namespace ElbowAssist.Phantom.Tests.Truth;

/// <summary>Landmarks against what the rays see, and against the way the film lies.</summary>
public sealed class LandmarkTruthTests
{
    private const int Size = 256;

    [Theory]
    [InlineData(View.Lateral)]
    [InlineData(View.Ap)]
    public void ContourLandmarks_LieOnTheEdgeOfTheirBone(View view)
    {
        var options = new SimulationOptions { FromAgeYears = 20, InjuredShare = 0 };
        for (ulong seed = 1; seed <= 6; seed++)
        {
            var setup = FilmSetup.OfCrop(Simulation.Sample(seed, options), view, Size, options);
            var truth = setup.Truth();
            var geometry = setup.Geometry;
            var margin = 0.15 / truth.ObjectPixelMillimetres;

            // Capitellum and medial lip may lie in front of one another: their outlines are edges of bone inside its shadow.
            foreach (var landmark in truth.Landmarks.Where(l => l.Tangent is not null && !IsOutlineOfAPart(l.Name)))
            {
                var p = landmark.Position!.Value;
                var across = landmark.Tangent!.Value.Perpendicular * margin;
                var one = Path(geometry, landmark.Name, p + across);
                var other = Path(geometry, landmark.Name, p - across);
                Assert.True(
                    Math.Min(one, other) == 0 && Math.Max(one, other) > 0,
                    string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{landmark.Name} of seed {seed}: {one:F2} mm of bone on one side, {other:F2} on the other."));
            }
        }
    }

    /// <summary>On the rounded side of the metaphysis an end would not be on the border that a reader lays a line along.</summary>
    [Fact]
    public void PhysisEnds_OfAChildsAp_LieInsideTheSidesOfTheBone()
    {
        var options = new SimulationOptions { FromAgeYears = 3, ToAgeYears = 9, InjuredShare = 0, Adequacy = Adequacy.Good };
        var (inside, laid) = (0, 0);
        for (ulong seed = 1; seed <= 30; seed++)
        {
            var setup = FilmSetup.OfCrop(Simulation.Sample(seed, options), View.Ap, Size, options);
            var truth = setup.Truth();
            Point? End(string name) => truth.Landmarks.First(l => l.Name == name).Position;
            if (End(LandmarkNames.CapitellumPhysisMedial) is { } medial && End(LandmarkNames.CapitellumPhysisLateral) is { } lateral)
            {
                var millimetreOut = lateral + ((lateral - medial).Unit * (1 / truth.ObjectPixelMillimetres));
                inside += Path(setup.Geometry, LandmarkNames.CapitellumPhysisLateral, millimetreOut) > 0 ? 1 : 0;
                laid++;
            }
        }

        Assert.InRange(laid, 20, 30);
        Assert.InRange(inside, 0.9 * laid, laid);
    }

    /// <summary>The outline of a ball of a known size lies at its radius, magnified, at every angle where it is free.</summary>
    [Fact]
    public void CapitellarRim_LiesAtTheRadiusOfTheCapitellum()
    {
        var options = new SimulationOptions { FromAgeYears = 20, InjuredShare = 0, Adequacy = Adequacy.Good };
        var seen = 0;
        for (ulong seed = 1; seed <= 12; seed++)
        {
            var elbow = Simulation.Sample(seed, options);
            var setup = FilmSetup.OfCrop(elbow, View.Lateral, Size, options);
            var truth = setup.Truth();
            var rim = Enumerable.Range(1, 12)
                .Select(n => truth.Landmarks.First(l => l.Name == LandmarkNames.CapitellumRim(n)).Position).ToList();
            seen += rim.Count(p => p is not null);
            foreach (var (a, b) in rim.Take(6).Zip(rim.Skip(6)).Where(pair => pair.First is not null && pair.Second is not null))
            {
                var diameter = a!.Value.DistanceTo(b!.Value) * truth.ObjectPixelMillimetres;
                Assert.InRange(diameter / (2 * elbow.Shape.Humerus.CapitellumRadius), 0.95, 1.1);
            }
        }

        Assert.True(seen > 4 * 12, "The rim of an adult should be free over a good part of its front.");
    }

    [Fact]
    public void MirrorImage_MirrorsEveryLandmark_AndTheFilm()
    {
        var options = new SimulationOptions { InjuredShare = 0 };
        var right = Enumerable.Range(1, 40).Select(s => Simulation.Sample((ulong)s, options)).First(e => e.Side == Side.Right);
        const int small = 64;
        var film = FilmSetup.OfFilm(right, View.Lateral, small, options);
        var mirror = film.With(film.Placement with
        {
            PlaneToFilm = film.Placement.PlaneToFilm.Then(new Similarity(-1, 0, new Vector(small, 0), true)),
        });
        foreach (var (a, b) in film.Truth().Landmarks.Zip(mirror.Truth().Landmarks))
        {
            Assert.Equal(a.Visible, b.Visible);
            if (a.Position is { } p)
            {
                Assert.Equal(small - p.X, b.Position!.Value.X, 3);
                Assert.Equal(p.Y, b.Position.Value.Y, 3);
            }
        }

        var paths = FilmRenderer.Render(film.Geometry, small, small);
        var mirrored = FilmRenderer.Render(mirror.Geometry, small, small);
        for (var y = 0; y < small; y++)
        {
            for (var x = 0; x < small; x++)
            {
                // Textures are sampled at places that differ by rounding; the whole thickness is not.
                int here = (y * small) + x, there = (y * small) + small - 1 - x;
                Assert.Equal(
                    paths.Soft[here] + paths.Fat[here] + paths.Bone[here],
                    mirrored.Soft[there] + mirrored.Fat[there] + mirrored.Bone[there],
                    0.5);
            }
        }
    }

    [Fact]
    public void ASeed_FixesPatientAndFilm()
    {
        var options = new SimulationOptions();
        for (ulong seed = 1; seed <= 5; seed++)
        {
            var first = Simulation.Project(Simulation.Sample(seed, options), View.Ap, 24, options);
            var again = Simulation.Project(Simulation.Sample(seed, options), View.Ap, 24, options);
            Assert.Equal(first.Paths.Bone, again.Paths.Bone);
            Assert.Equal(first.Paths.Fat, again.Paths.Fat);
            Assert.Equal(first.Truth.Landmarks, again.Truth.Landmarks);
        }

        Assert.NotEqual(Simulation.Sample(1, options).Shape, Simulation.Sample(2, options).Shape);
    }

    [Fact]
    public void CropFraming_PutsTheShaftUp_AndTheMarkOnTheCanonicalSideUpToItsDisturbance()
    {
        var options = new SimulationOptions();
        var upright = 0;
        for (ulong seed = 1; seed <= 20; seed++)
        {
            var truth = FilmSetup.OfCrop(Simulation.Sample(seed, options), View.Lateral, Size, options).Truth();
            var shaft = truth.Locator.Shaft - truth.Locator.Joint;
            upright += shaft.Y < 0 && Math.Abs(Math.Atan2(shaft.X, -shaft.Y)) < 36 * Math.PI / 180 ? 1 : 0;
        }

        Assert.Equal(20, upright);
    }

    [Fact]
    public void UndisplacedElbow_HasNoInjuryCode_AndInjuredOnesCarryTheirs()
    {
        Assert.Empty(Simulation.Sample(3, new SimulationOptions { InjuredShare = 0 }).Injuries);
        var broken = Simulation.Sample(3, new SimulationOptions { Injuries = [Phantom.Injury.InjuryKind.Olecranon] });
        Assert.Equal("olecranon", Assert.Single(broken.Injuries));
    }

    private static bool IsOutlineOfAPart(string name) =>
        name.StartsWith("capitellum.rim", StringComparison.Ordinal) || name.StartsWith("trochlea.lip", StringComparison.Ordinal);

    private static float Path(ElbowGeometry geometry, string landmark, Point p)
    {
        var paths = RayIntegrator.Trace(in geometry, (float)p.X, (float)p.Y);
        return landmark[0] switch
        {
            'r' => paths.Radius,
            'u' => paths.Ulna,
            _ => paths.Humerus,
        };
    }
}
