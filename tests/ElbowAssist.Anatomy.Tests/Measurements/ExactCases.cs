using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Anatomy.Measurements;
using ElbowAssist.Geometry;
using ElbowAssist.Testing;

namespace ElbowAssist.Anatomy.Tests.Measurements;

/// <summary>Values worked out by hand from the sizes and angles of an invented elbow.</summary>
public sealed class ExactCases
{
    private static readonly InventedElbow Elbow = new() { NeckTilt = 0 };

    [Theory]
    [InlineData("anterior-humeral-line.position", 0.525)] // (9 + 10 - 8.5) / 20
    [InlineData("anterior-humeral-line.shaft.position", 0.525)]
    [InlineData("radiocapitellar-line.lateral.neck.offset", 0.05)] // 1 / 20
    [InlineData("radiocapitellar-line.lateral.shaft.offset", 0.05)]
    [InlineData("radiocapitellar-ratio", 0.05)]
    [InlineData("shaft-condylar-angle", 34.902495)] // atan(9 / (18 - 5.1))
    [InlineData("lateral-capitellohumeral-angle", 50)] // 90 - 40
    [InlineData("flexion-angle", 90)]
    [InlineData("radial-neck-shaft-angle", 0)]
    [InlineData("ulnohumeral-gap", 2.5)]
    [InlineData("fat-pad.anterior.angle", 12)]
    [InlineData("true-lateral.arc-offset", 0.05)]
    public void Lateral_ValueByHand(string name, double expected) =>
        Assert.Equal(expected, Lateral(Elbow)[name], 1e-6);

    [Theory]
    [InlineData("radiocapitellar-line.ap.neck.offset", 0.051117)] // 1 / (20 cos 12°)
    [InlineData("radiocapitellar-line.ap.shaft.offset", 0.051117)]
    [InlineData("baumann-angle", 72)] // 90 - 18
    [InlineData("carrying-angle", 12)]
    [InlineData("radial-neck-shaft-angle", 0)]
    public void Ap_ValueByHand(string name, double expected) => Assert.Equal(expected, Ap(Elbow)[name], 1e-6);

    [Fact]
    public void EveryMeasurement_HasAHandWorkedCase()
    {
        Assert.Equal(
            ViewMeasurements.Lateral.Select(m => m.Name).Order(StringComparer.Ordinal),
            Lateral(Elbow).Keys.Order(StringComparer.Ordinal));
        Assert.Equal(
            ViewMeasurements.Ap.Select(m => m.Name).Order(StringComparer.Ordinal), Ap(Elbow).Keys.Order(StringComparer.Ordinal));
    }

    [Theory]
    [InlineData(-5, "capitellum-behind-line")] // (-5 + 10 - 8.5) / 20 = -0.175
    [InlineData(2, "anterior-third")]
    [InlineData(9, "middle-third")]
    [InlineData(15, "posterior-third")]
    [InlineData(20, "capitellum-before-line")]
    public void Position_NamesItsZone(double forward, string zone)
    {
        var laid = Laid(View.Lateral, Elbow with { CapitellumForward = forward }, 0.01);
        var value = FilmMeasuring.Measure(laid, RedrawOptions.Default)[0];
        Assert.Equal(1, value.Zones![zone], 1e-12);
        Assert.Equal(1, value.Zones.Values.Sum(), 1e-12);
    }

    [Fact]
    public void RadialNeckTilt_CountsTowardFlexorAndLateralSide()
    {
        var tilted = Elbow with { NeckTilt = 12.2 };
        Assert.Equal(12.2, Lateral(tilted)["radial-neck-shaft-angle"], 1e-9);
        Assert.Equal(-12.2, Ap(Elbow with { NeckTilt = -12.2 })["radial-neck-shaft-angle"], 1e-9);
    }

    [Fact]
    public void BowedCortex_MovesTheLineLaidHigherButNotTheOneLaidLower()
    {
        // Bow 0.8 raises the anterior cortex by 0.8·(level − 1)²/4 W-levels: a parabola through levels 3, 2.5, 2.
        var straight = Lateral(Elbow);
        var bowed = Lateral(Elbow with { Bow = 2 });
        Assert.True(bowed["anterior-humeral-line.shaft.position"] > straight["anterior-humeral-line.shaft.position"] + 0.05);
        Assert.True(
            Math.Abs(bowed["anterior-humeral-line.position"] - straight["anterior-humeral-line.position"]) <
            Math.Abs(bowed["anterior-humeral-line.shaft.position"] - straight["anterior-humeral-line.shaft.position"]));
    }

    [Fact]
    public void WholeRim_TakesTheOutlineAndPartOfIt_TheCircle()
    {
        // Twelve points of a circle, 30° apart, with one at the front: the outline reaches the circle exactly there.
        var whole = Elbow with { Rim = (-150, 180), Turn = 0 };
        Assert.Equal(0.525, Lateral(whole)["anterior-humeral-line.position"], 1e-9);

        // Flatten the back of the nucleus by 4 mm: 16 mm wide, front unchanged, (19 - 8.5) / 16.
        var set = LandmarkSet.Lateral;
        var pixels = whole.Lateral().ToArray();
        var axis = Film(whole, 0, 0);
        foreach (var n in new[] { 8, 9, 10, 11, 12 })
        {
            var index = set.IndexOf(LandmarkNames.CapitellumRim(n));
            var back = Film(whole, -1 + 4, 0);
            var p = pixels[index]!.Value;
            // Without turn and mirror, anterior is −x: the back edge may not lie beyond x of the flattened wall.
            pixels[index] = p with { X = Math.Min(p.X, back.X) };
        }

        var value = FilmMeasuring.Exact(LaidLandmarks.Exact(set, pixels, FilmScale.Of(0.2, 0.2)));
        Assert.True(axis.X > 0);
        Assert.Equal((19 - 8.5) / 16, value["anterior-humeral-line.position"], 0.01);
    }

    [Fact]
    public void UlnarBow_IsTheLargestGapFromTheChord()
    {
        var pixels = Elbow.Lateral().ToArray();
        var set = LandmarkSet.Lateral;
        pixels[set.IndexOf(LandmarkNames.UlnaOlecranon)] = new Point(100, 100);
        pixels[set.IndexOf(LandmarkNames.UlnaPosterior(1))] = new Point(200, 110);
        pixels[set.IndexOf(LandmarkNames.UlnaPosterior(2))] = new Point(300, 115);
        pixels[set.IndexOf(LandmarkNames.UlnaPosterior(3))] = new Point(500, 100);
        var value = FilmMeasuring.Exact(LaidLandmarks.Exact(set, pixels, FilmScale.Of(0.2, 0.2)));
        Assert.Equal(15 * 0.2, value["ulnar-bow"], 1e-9);
    }

    internal static IReadOnlyDictionary<string, double> Lateral(InventedElbow elbow) => Exact(View.Lateral, elbow);

    internal static IReadOnlyDictionary<string, double> Ap(InventedElbow elbow) => Exact(View.Ap, elbow);

    internal static LaidLandmarks Laid(View view, InventedElbow elbow, double deviationMm)
    {
        var set = LandmarkSet.Of(view)!;
        var pixels = view == View.Lateral ? elbow.Lateral() : elbow.Ap();
        var one = Covariance.Isotropic(deviationMm).Scaled(1 / elbow.ColumnSpacing, 1 / elbow.RowSpacing);
        var spread = Geometry.Spread.JointCovariance.Independent([.. pixels.Select(p => p is null ? Covariance.Zero : one)]);
        return LaidLandmarks.WithSpread(set, pixels, spread, FilmScale.Of(elbow.RowSpacing, elbow.ColumnSpacing));
    }

    private static IReadOnlyDictionary<string, double> Exact(View view, InventedElbow elbow) =>
        FilmMeasuring.Exact(LaidLandmarks.Exact(
            LandmarkSet.Of(view)!,
            view == View.Lateral ? elbow.Lateral() : elbow.Ap(),
            FilmScale.Of(elbow.RowSpacing, elbow.ColumnSpacing)));

    private static Point Film(InventedElbow elbow, double anterior, double distal) =>
        new((elbow.Place.X - anterior) / elbow.ColumnSpacing, (elbow.Place.Y + distal) / elbow.RowSpacing);
}
