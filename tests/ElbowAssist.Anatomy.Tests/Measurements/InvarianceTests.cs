using System.Globalization;
using CsCheck;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Anatomy.Measurements;
using ElbowAssist.Geometry;
using ElbowAssist.Geometry.Spread;
using ElbowAssist.Testing;

namespace ElbowAssist.Anatomy.Tests.Measurements;

/// <summary>How a film lies, which side it shows and how large its pixels are changes no measurement.</summary>
public sealed class InvarianceTests
{
    private const int Films = 2000;

    [Fact]
    public void TurnMirrorShiftAndPixelShape_ChangeNothing() =>
        Gen.Select(RandomElbow.Gen, RandomElbow.Pose).Sample(
            (elbow, pose) =>
            {
                foreach (var view in new[] { View.Lateral, View.Ap })
                {
                    AssertSame(Exact(view, elbow), Exact(view, pose(elbow)), 1e-9);
                }
            },
            iter: Films);

    [Fact]
    public void WithUnequalSpread_TurnAndMirrorChangeNothing() =>
        Gen.Select(RandomElbow.Gen, Gen.Double[-180, 180], Gen.Bool, Gen.Int[1, 1_000_000]).Sample(
            (elbow, turn, mirrored, seed) =>
            {
                foreach (var view in new[] { View.Lateral, View.Ap })
                {
                    var here = Values(view, elbow with { Turn = 0, Mirrored = false }, seed);
                    var there = Values(view, elbow with { Turn = turn, Mirrored = mirrored }, seed);
                    AssertSame(here, there, 1e-7);
                }
            },
            iter: 300);

    [Fact]
    public void WithoutSpacing_AnglesAndRatiosStay() =>
        RandomElbow.Gen.Sample(
            elbow =>
            {
                var set = LandmarkSet.Lateral;
                var square = elbow with { ColumnSpacing = 0.17, RowSpacing = 0.17 };
                var known = FilmMeasuring.Exact(LaidLandmarks.Exact(set, square.Lateral(), FilmScale.Of(0.17, 0.17)));
                var unknown = FilmMeasuring.Exact(LaidLandmarks.Exact(set, square.Lateral(), FilmScale.Unknown));
                foreach (var measurement in ViewMeasurements.Lateral.Where(m => m.Unit != "mm"))
                {
                    Assert.Equal(known[measurement.Name], unknown[measurement.Name], 1e-9);
                }
            },
            iter: 300);

    [Fact]
    public void Size_ChangesLengthsInProportionAndNothingElse() =>
        Gen.Select(RandomElbow.Gen, Gen.Double[0.4, 2.5]).Sample(
            (elbow, factor) =>
            {
                var small = Exact(View.Lateral, elbow);
                var large = Exact(View.Lateral, elbow with { ColumnSpacing = elbow.ColumnSpacing, RowSpacing = elbow.RowSpacing }, factor);
                foreach (var measurement in ViewMeasurements.Lateral)
                {
                    var expected = small[measurement.Name] * (measurement.Unit == "mm" ? factor : 1);
                    Assert.Equal(expected, large[measurement.Name], 1e-8);
                }
            },
            iter: 500);

    private static void AssertSame(
        IReadOnlyDictionary<string, double> a, IReadOnlyDictionary<string, double> b, double tolerance)
    {
        Assert.Equal(a.Keys.Order(StringComparer.Ordinal), b.Keys.Order(StringComparer.Ordinal));
        Assert.All(a, v => Assert.True(Math.Abs(v.Value - b[v.Key]) <= tolerance, string.Create(CultureInfo.InvariantCulture, $"{v.Key}: {v.Value:R} and {b[v.Key]:R}")));
    }

    private static IReadOnlyDictionary<string, double> Exact(View view, InventedElbow elbow, double factor = 1) =>
        FilmMeasuring.Exact(LaidLandmarks.Exact(
            LandmarkSet.Of(view)!,
            view == View.Lateral ? elbow.Lateral() : elbow.Ap(),
            FilmScale.Of(elbow.RowSpacing * factor, elbow.ColumnSpacing * factor)));

    // Every landmark gets a covariance of its own along and across the shaft, which turns with the film: a fifth of a
    // millimetre at most, so that no redraw, which does not turn along, leaves a small nucleus without a circle.
    private static Dictionary<string, double> Values(View view, InventedElbow elbow, int seed)
    {
        var set = LandmarkSet.Of(view)!;
        var random = new Random(seed);
        var pixels = view == View.Lateral ? elbow.Lateral() : elbow.Ap();
        var (sine, cosine) = Math.SinCos(elbow.Turn * Math.PI / 180);
        var hand = elbow.Mirrored ? 1 : -1;
        var side = new Vector(cosine * hand, sine * hand);
        var distal = new Vector(-sine, cosine);
        var spread = JointCovariance.Independent([.. pixels.Select(p =>
        {
            double a = 0.002 + (0.04 * random.NextDouble()), b = 0.002 + (0.04 * random.NextDouble()), mixed = Math.Sqrt(a * b) * ((2 * random.NextDouble()) - 1) * 0.9;
            var inMm = new Covariance(
                (a * side.X * side.X) + (2 * mixed * side.X * distal.X) + (b * distal.X * distal.X),
                (a * side.X * side.Y) + (mixed * ((side.X * distal.Y) + (side.Y * distal.X))) + (b * distal.X * distal.Y),
                (a * side.Y * side.Y) + (2 * mixed * side.Y * distal.Y) + (b * distal.Y * distal.Y));
            return p is null ? Covariance.Zero : inMm.Scaled(1 / elbow.ColumnSpacing, 1 / elbow.RowSpacing);
        })]);
        var laid = LaidLandmarks.WithSpread(set, pixels, spread, FilmScale.Of(elbow.RowSpacing, elbow.ColumnSpacing));
        return FilmMeasuring.Measure(laid, RedrawOptions.Default with { Draws = 2 }).Where(v => v.Value is not null)
            .ToDictionary(v => v.Definition.Name, v => v.Value!.Value, StringComparer.Ordinal);
    }
}
