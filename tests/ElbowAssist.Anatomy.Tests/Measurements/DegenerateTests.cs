using CsCheck;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Anatomy.Measurements;
using ElbowAssist.Geometry;
using ElbowAssist.Geometry.Spread;
using ElbowAssist.Testing;

namespace ElbowAssist.Anatomy.Tests.Measurements;

/// <summary>Missing, coincident, collinear and senseless landmarks give reasons, never an exception or a NaN.</summary>
public sealed class DegenerateTests
{
    [Fact]
    public void NothingOnTheFilm_EveryMeasurementSaysWhy()
    {
        foreach (var set in new[] { LandmarkSet.Lateral, LandmarkSet.Ap })
        {
            var values = FilmMeasuring.Measure(
                LaidLandmarks.Exact(set, new Point?[set.Landmarks.Count], FilmScale.Unknown), RedrawOptions.Default);
            Assert.Equal(ViewMeasurements.Of(set.View).Count, values.Count);
            Assert.All(values, v => Assert.Null(v.Value));
            Assert.All(values, v => Assert.NotEmpty(v.Reasons));
        }
    }

    [Fact]
    public void EveryNeededLandmark_IsMissed()
    {
        foreach (var view in new[] { View.Lateral, View.Ap })
        {
            var set = LandmarkSet.Of(view)!;
            var elbow = new InventedElbow();
            var pixels = view == View.Lateral ? elbow.Lateral() : elbow.Ap();
            foreach (var measurement in ViewMeasurements.Of(view))
            {
                foreach (var need in measurement.Needs)
                {
                    Assert.All(need.Landmarks, n => Assert.True(set.IndexOf(n) >= 0, n));
                    Point?[] without = [.. pixels.Select((p, i) => need.Landmarks.Contains(set.Landmarks[i].Name) ? null : p)];
                    var value = FilmMeasuring.Measure(LaidLandmarks.Exact(set, without, FilmScale.Of(0.2, 0.2)), RedrawOptions.Default)
                        .Single(v => v.Definition == measurement);
                    Assert.Null(value.Value);
                    Assert.Contains(need.Reason, value.Reasons);
                    Assert.Empty(value.Lines);
                    Assert.Empty(value.Circles);
                }
            }
        }
    }

    [Fact]
    public void AllLandmarksInOnePlace_OrOnOneLine_DefineNothing()
    {
        foreach (var set in new[] { LandmarkSet.Lateral, LandmarkSet.Ap })
        {
            Point?[] one = [.. set.Landmarks.Select(_ => (Point?)new Point(100, 100))];
            Assert.All(Measured(set, one), v => Assert.True(v.Value is null || double.IsFinite(v.Value.Value)));
            Assert.Contains(Measured(set, one), v => v.Reasons.Contains(ReasonCodes.ConstructionUndefined));
            Point?[] row = [.. set.Landmarks.Select((_, i) => (Point?)new Point(100 + i, 100 + i))];
            Assert.All(Measured(set, row), v => Assert.True(v.Value is null || double.IsFinite(v.Value.Value)));
        }
    }

    [Fact]
    public void AnyLandmarksWhatever_GiveFiniteValuesOrReasons() =>
        Gen.Select(Gen.Bool, Gen.Int, Gen.Int[0, 3]).Sample(
            (lateral, seed, kind) =>
            {
                var random = new Random(seed);
                var set = lateral ? LandmarkSet.Lateral : LandmarkSet.Ap;
                Point?[] pixels = [.. set.Landmarks.Select(_ => Any(random, kind))];
                foreach (var value in Measured(set, pixels))
                {
                    Assert.True(value.Value is null ? value.Reasons.Count > 0 : double.IsFinite(value.Value.Value) && value.Redraw95 is not null);
                    Assert.True(value.Redraw95 is null || double.IsFinite(value.Redraw95.Value.Low + value.Redraw95.Value.High));
                    Assert.All(value.Lines, l => Assert.True(l.Line.Point.IsFinite && double.IsFinite(l.Line.Direction.X + l.OffsetVariance + l.AngleVariance)));
                    Assert.All(value.Circles, c => Assert.True(c.Circle.Centre.IsFinite && c.Circle.Radius > 0));
                }
            },
            iter: 2000);

    private static Point? Any(Random random, int kind) => (kind, random.Next(12)) switch
    {
        (_, 0) => null,
        (_, 1) => new Point(double.NaN, 1),
        (_, 2) => new Point(double.PositiveInfinity, 1),
        (0, _) => new Point(random.Next(3), random.Next(3)),
        (1, _) => new Point(random.NextDouble() * 1000, random.NextDouble() * 1000),
        (2, _) => new Point(random.Next(4), 50),
        _ => new Point(1e7 * random.NextDouble(), -1e7 * random.NextDouble()),
    };

    private static IReadOnlyList<MeasuredValue> Measured(LandmarkSet set, IReadOnlyList<Point?> pixels)
    {
        var spread = JointCovariance.Independent([.. pixels.Select(p => p is { IsFinite: true } ? Covariance.Isotropic(0.3) : Covariance.Zero)]);
        return FilmMeasuring.Measure(
            LaidLandmarks.WithSpread(set, pixels, spread, FilmScale.Of(0.2, 0.3)), RedrawOptions.Default with { Draws = 40 });
    }
}
