using ElbowAssist.Geometry;
using ElbowAssist.Models.Merging;
using ElbowAssist.Pipeline.Calibration;

namespace ElbowAssist.Pipeline.Tests;

/// <summary>Tables of a calibration applied by hand.</summary>
public sealed class CalibrationTests
{
    [Fact]
    public void ASharedMove_TiesTwoLandmarksTogether()
    {
        // Both landmarks move along x by 0.6 of their spread together; each keeps 0.64 of its variance for itself.
        var shared = new SharedSpread(["a", "b"], [[0.6], [0], [0.6], [0]], [[0.64, 0, 1], [0.64, 0, 1]], 100);
        var pose = Similarity.About(new Point(0, 0), 0, 0.5);
        var joint = shared.Joint([Merged("a", 2), null, Merged("b", 3)], pose);
        Assert.Equal(4, joint[0, 0], 9);
        Assert.Equal(4, joint[1, 1], 9);
        Assert.Equal(9, joint[4, 4], 9);
        Assert.Equal(0.36 * 2 * 3, joint[0, 4], 9);
        Assert.Equal(0, joint[1, 5], 9);
        Assert.Equal(0, joint[2, 2], 9);
    }

    [Fact]
    public void ASharedMove_TurnsWithThePose()
    {
        // A quarter turn from film to crop: what is x in the crop lies along y on the film.
        var shared = new SharedSpread(["a", "b"], [[0.6], [0], [0.6], [0]], [[0.64, 0, 1], [0.64, 0, 1]], 100);
        var joint = shared.Joint([Merged("a", 2), Merged("b", 3)], Similarity.About(new Point(5, 7), Math.PI / 2, 1));
        Assert.Equal(0.36 * 6, joint[1, 3], 9);
        Assert.Equal(0, joint[0, 2], 9);
    }

    [Fact]
    public void TheSquareRoot_TimesItself_IsTheCovariance()
    {
        var c = new Covariance(5, 2, 3);
        var root = SquareRoot.Of(c);
        Assert.Equal(c.XX, (root.XX * root.XX) + (root.XY * root.XY), 12);
        Assert.Equal(c.XY, (root.XX * root.XY) + (root.XY * root.YY), 12);
        Assert.Equal(c.YY, (root.XY * root.XY) + (root.YY * root.YY), 12);
        var white = root.Whiten(root.Column(0))!.Value;
        Assert.Equal(1, white.X, 12);
        Assert.Equal(0, white.Y, 12);
        Assert.Null(SquareRoot.Of(Covariance.Zero).Whiten(new Vector(1, 1)));
    }

    [Fact]
    public void AShape_IsNoFartherForItsPlaceTurnAndSize()
    {
        double[] square = [-1, -1, 1, -1, 1, 1, -1, 1];
        var shape = new ShapeModel("humerus", ["a", "b", "c", "d"], [.. square.Select(v => v / Math.Sqrt(2))], [], 0.01, 50);
        var placed = Enumerable.Range(0, 4).ToDictionary(i => shape.Landmarks[i], i => new Point(square[2 * i], square[(2 * i) + 1]), StringComparer.Ordinal);
        var turned = Similarity.About(new Point(30, 4), 1.1, 17);
        Assert.Equal(0, shape.Distance(placed.ToDictionary(p => p.Key, p => turned.Apply(p.Value), StringComparer.Ordinal))!.Value, 6);

        placed["c"] = new Point(1.6, 1.2);
        Assert.InRange(shape.Distance(placed)!.Value, 0.5, 10);
        placed.Remove("c");
        Assert.Null(shape.Distance(placed));
    }

    [Fact]
    public void AModeOfAShape_CostsWhatItsSpreadSays()
    {
        // The fourth corner slides outward; once laid onto the mean, what is left of that move is the mode.
        double[] mean = [-0.7071, -0.7071, 0.7071, -0.7071, 0.7071, 0.7071, -0.7071, 0.7071];
        Point[] corners = [.. Enumerable.Range(0, 4).Select(i => new Point(mean[2 * i], mean[(2 * i) + 1]))];
        Point[] moved = [.. corners.Take(3), corners[3] + new Vector(-0.05, 0.05)];
        var onto = Procrustes.Onto(moved, corners)!.Value;
        double[] mode = [.. moved.Zip(corners).SelectMany(p => new[] { onto.Apply(p.First).X - p.Second.X, onto.Apply(p.First).Y - p.Second.Y })];
        var stiff = new ShapeModel("ulna", ["a", "b", "c", "d"], mean, [], 0.0001, 50);
        var free = stiff with { Modes = [mode] };
        var placed = stiff.Landmarks.Zip(moved).ToDictionary(p => p.First, p => p.Second, StringComparer.Ordinal);

        // One standard deviation of one mode over four degrees of freedom.
        Assert.InRange(free.Distance(placed)!.Value, 0.4, 0.51);
        Assert.True(free.Distance(placed) < stiff.Distance(placed) / 3);
    }

    [Fact]
    public void FeaturesFarFromTheirMean_AreFar()
    {
        var model = new FeatureModel([1, 2, 3], [[1, 0, 0]], [4], 1, [new FeatureSign("metal", [2], -1)], 50);
        Assert.Equal(0, model.Distance([1, 2, 3])!.Value, 9);
        Assert.Equal(Math.Sqrt(1.0 / 3), model.Distance([3, 2, 3])!.Value, 9); // one standard deviation along the direction
        Assert.Equal(Math.Sqrt(4.0 / 3), model.Distance([1, 4, 3])!.Value, 9); // two across it
        Assert.Equal(1 / (1 + Math.Exp(-1)), model.Probability("metal", [3, 2, 3])!.Value, 9);
        Assert.Null(model.Probability("cast", [3, 2, 3]));
        Assert.Null(model.Distance([1, 2]));
    }

    [Fact]
    public void TheNarrowestBand_GivesTheFactor_AndAnUnknownAgeTheLargest()
    {
        var calibration = ModelCalibration.None with
        {
            Intervals =
            [
                new("m", 0, null, 1.2, 500), new("m", 0, 192, 1.5, 300), new("m", 24, 60, 2, 150), new("n", 0, null, 0.9, 500),
            ],
        };
        Assert.Equal(2, calibration.FactorsFor(30)["m"]);
        Assert.Equal(1.5, calibration.FactorsFor(60)["m"]);
        Assert.Equal(1.2, calibration.FactorsFor(192)["m"]);
        Assert.Equal(2, calibration.FactorsFor(null)["m"]);
        Assert.Equal(0.9, calibration.FactorsFor(30)["n"]);
    }

    private static MergedProposal Merged(string name, double deviation) =>
        new(name, new Point(10, 10), Covariance.Isotropic(deviation), 1, 1, Covariance.Zero, null, []);
}
