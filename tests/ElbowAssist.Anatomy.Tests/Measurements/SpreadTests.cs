using System.Globalization;
using CsCheck;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Anatomy.Measurements;
using ElbowAssist.Geometry;
using ElbowAssist.Geometry.Spread;
using ElbowAssist.Testing;

namespace ElbowAssist.Anatomy.Tests.Measurements;

/// <summary>Redraw intervals against the closed form, and against repeated experiments.</summary>
public sealed class SpreadTests
{
    private const double HalfWidthsPerDeviation = 1.959964; // standard normal quantile 0.975

    private static readonly InventedElbow Adult = new()
    {
        NeckTilt = 10,
        TrochleaOffset = 4,
        RadialOffset = 2,
        HeadForward = 2,
        Bow = 0.3,
        Gap = 5,
    };

    [Theory]
    [InlineData(View.Lateral)]
    [InlineData(View.Ap)]
    public void SmallSpread_RedrawsAgreeWithClosedForm(View view)
    {
        var laid = WithSharedError(view, Adult, 0.05);
        var closed = FilmMeasuring.ClosedFormDeviations(laid);
        foreach (var value in FilmMeasuring.Measure(laid, RedrawOptions.Default with { Draws = 20_000 }))
        {
            var (low, high) = value.Redraw95!.Value;
            var drawn = (high - low) / 2 / HalfWidthsPerDeviation;
            Assert.Equal(1, drawn / closed[value.Definition.Name], 0.05);
        }
    }

    [Theory]
    [InlineData(View.Lateral)]
    [InlineData(View.Ap)]
    public void RepeatedLayings_FallIntoTheInterval(View view)
    {
        const int Experiments = 1000;
        var exact = WithSharedError(view, Adult, 0.25);
        var truth = Nominal(exact);
        var inside = truth.Keys.ToDictionary(k => k, _ => 0, StringComparer.Ordinal);
        var set = LandmarkSet.Of(view)!;
        var experiment = 0;
        Redraws.Of(
            exact.Points,
            exact.Spread!,
            (points, values) =>
            {
                Point?[] pixels = [.. points.ToArray().Select(p => p.IsFinite ? exact.Scale.ToPixels(p) : (Point?)null)];
                var again = LaidLandmarks.WithSpread(
                    set, pixels, exact.Spread!.Scaled(1 / exact.Scale.ColumnSpacing, 1 / exact.Scale.RowSpacing), exact.Scale);
                var options = RedrawOptions.Default with { Draws = 500, Seed = ++experiment };
                foreach (var value in FilmMeasuring.Measure(again, options))
                {
                    var (low, high) = value.Redraw95!.Value;
                    var true_ = truth[value.Definition.Name];
                    inside[value.Definition.Name] += low <= true_ && true_ <= high ? 1 : 0;
                }
            },
            1,
            Experiments,
            seed: 20_261);
        Assert.All(inside, i => Assert.True(
            i.Value is >= 930 and <= 970, string.Create(CultureInfo.InvariantCulture, $"{i.Key}: {i.Value} of {Experiments} intervals held the value.")));
    }

    [Theory]
    [InlineData(View.Lateral)]
    [InlineData(View.Ap)]
    public void ShortLinesOfUncertainLandmarks_HaveBandsNoWiderThanTheirLandmarksMove(View view)
    {
        const double Spread = 8; // mm: redraws of the fat pad's edge come to stand upright on it
        var laid = WithSharedError(view, Adult, Spread);
        foreach (var line in FilmMeasuring.Measure(laid, RedrawOptions.Default).SelectMany(v => v.Lines))
        {
            var deviation = Math.Sqrt(line.OffsetVariance) * laid.Scale.ColumnSpacing;
            Assert.InRange(deviation, 0, 5 * Spread);
        }
    }

    [Fact]
    public void Factor_StretchesTheIntervalAboutTheValue()
    {
        var laid = WithSharedError(View.Lateral, Adult, 0.3);
        var plain = FilmMeasuring.Measure(laid, RedrawOptions.Default)[0];
        var stretched = FilmMeasuring.Measure(laid, RedrawOptions.Default with
        {
            Factors = new Dictionary<string, double>(StringComparer.Ordinal) { [plain.Definition.Name] = 1.7 },
        })[0];
        Assert.Equal(plain.Value, stretched.Value);
        Assert.Equal(1.7 * (plain.Value!.Value - plain.Redraw95!.Value.Low), stretched.Value!.Value - stretched.Redraw95!.Value.Low, 1e-12);
        Assert.Equal(1.7 * (plain.Redraw95.Value.High - plain.Value.Value), stretched.Redraw95.Value.High - stretched.Value.Value, 1e-12);
    }

    [Fact]
    public void SameFilm_SameIntervals()
    {
        var laid = WithSharedError(View.Ap, Adult, 0.3);
        Assert.Equal(
            FilmMeasuring.Measure(laid, RedrawOptions.Default).Select(v => v.Redraw95),
            FilmMeasuring.Measure(laid, RedrawOptions.Default).Select(v => v.Redraw95));
    }

    [Fact]
    public void ErrorSharedByNeighbours_WidensThePositionAndNarrowsTheAngle()
    {
        // One shared shift moves a line without turning it: the angle feels only what each point errs alone.
        var alone = FilmMeasuring.ClosedFormDeviations(ExactCases.Laid(View.Lateral, Adult, 0.5));
        var shared = FilmMeasuring.ClosedFormDeviations(WithSharedError(View.Lateral, Adult, 0.5));
        Assert.True(shared["flexion-angle"] < alone["flexion-angle"]);
    }

    // Half of each landmark's variance is a shift common to all of a bone edge's neighbours; the total is that of deviation.
    private static LaidLandmarks WithSharedError(View view, InventedElbow elbow, double deviation)
    {
        var set = LandmarkSet.Of(view)!;
        var pixels = view == View.Lateral ? elbow.Lateral() : elbow.Ap();
        var size = 2 * pixels.Count;
        var matrix = new double[size * size];
        for (var i = 0; i < size; i++)
        {
            for (var j = i % 2; j < size; j += 2)
            {
                if (pixels[i / 2] is null || pixels[j / 2] is null)
                {
                    continue;
                }

                var near = Math.Exp(-Math.Abs((i / 2) - (j / 2)) / 3.0);
                var spacing = int.IsEvenInteger(i) ? elbow.ColumnSpacing : elbow.RowSpacing;
                matrix[(i * size) + j] = deviation * deviation * ((i == j ? 0.5 : 0) + (0.5 * near)) / spacing / spacing;
            }
        }

        Assert.True(JointCovariance.TryCreate(pixels.Count, matrix, out var joint, out var problem), problem);
        return LaidLandmarks.WithSpread(set, pixels, joint, FilmScale.Of(elbow.RowSpacing, elbow.ColumnSpacing));
    }

    private static Dictionary<string, double> Nominal(LaidLandmarks laid) =>
        FilmMeasuring.Measure(laid, RedrawOptions.Default with { Draws = 2 })
            .ToDictionary(v => v.Definition.Name, v => v.Value!.Value, StringComparer.Ordinal);
}
