using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Anatomy.Measurements;
using ElbowAssist.Geometry;
using ElbowAssist.Testing;

namespace ElbowAssist.External.Measurements;

/// <summary>Constructions against the examples and conventions of their publications; the source stands beside each check.</summary>
public sealed class ConstructionChecks
{
    private static readonly InventedElbow Elbow = new();

    // Radiocapitellar ratio, Orthop Proc 2011;93-B Supp IV: 5 mm on a capitellum of 20 mm is 25 %.
    [Fact]
    public void RadiocapitellarRatio_ExampleOfItsSource() =>
        Assert.Equal(0.25, Lateral(Elbow with { HeadForward = 5, CapitellumRadius = 10 })["radiocapitellar-ratio"], 1e-6);

    // Rouleau 2012 (J Shoulder Elbow Surg 21:574): the window −5 … +13 % is about −1 … +3 mm on 25 mm.
    [Theory]
    [InlineData(-1.25, -0.05)]
    [InlineData(3.25, 0.13)]
    public void RadiocapitellarRatio_WindowInMillimetres(double forward, double ratio) =>
        Assert.Equal(ratio, Lateral(Elbow with { HeadForward = forward, CapitellumRadius = 12.5 })["radiocapitellar-ratio"], 1e-6);

    // Same source: + when the radial head is anterior, whichever way the film lies.
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void MirroredFilm_KeepsSignAndThird(bool mirrored)
    {
        var values = Lateral(Elbow with { HeadForward = 5, Mirrored = mirrored, CapitellumForward = 5 });
        Assert.Equal(0.25, values["radiocapitellar-ratio"], 1e-9);
        Assert.Equal((15 - 8.5) / 20, values["anterior-humeral-line.position"], 1e-9);
    }

    // Definition of the thirds, 0 the anterior and 1 the posterior edge of the capitellum.
    [Theory]
    [InlineData(0.20, "anterior-third")]
    [InlineData(0.50, "middle-third")]
    [InlineData(0.80, "posterior-third")]
    [InlineData(-0.05, "capitellum-behind-line")]
    [InlineData(1.05, "capitellum-before-line")]
    public void AnteriorHumeralLine_Thirds(double position, string zone)
    {
        // position = (forward + radius − W/2) / diameter
        var values = Lateral(Elbow with { CapitellumForward = (position * 20) - 10 + 8.5 });
        Assert.Equal(position, values["anterior-humeral-line.position"], 1e-9);
        Assert.Equal(zone, ViewMeasurements.Lateral[0].Zones.Single(z => z.Holds(position)).Name);
    }

    // Conventions A and B of the Baumann angle: A + B = 90 exactly. Window A 64–81 of one source is B 9–26 of another
    // (114 children, Williamson DM et al, J Pediatr Orthop 1992;12:636–9, and a review chapter by Abzug JM).
    [Theory]
    [InlineData(9, 81, "Convention B: 9.0 degrees.")]
    [InlineData(18, 72, "Convention B: 18.0 degrees.")]
    [InlineData(26, 64, "Convention B: 26.0 degrees.")]
    public void Baumann_ConventionsAddUpToARightAngle(double slope, double conventionA, string beside)
    {
        var a = Ap(Elbow with { PhysisSlope = slope })["baumann-angle"];
        Assert.Equal(conventionA, a, 1e-9);
        Assert.Equal(90, a + slope, 1e-9);
        Assert.Equal(beside, ViewMeasurements.Ap.Single(m => m.Name == "baumann-angle").NoteBeside(a));
    }

    // Geometry, and the review chapter's "B below 9° is varus": tilting the distal fragment into varus raises A.
    [Fact]
    public void Baumann_VarusRaisesConventionA() =>
        Assert.True(Ap(Elbow with { PhysisSlope = 8 })["baumann-angle"] > Ap(Elbow with { PhysisSlope = 18 })["baumann-angle"]);

    // Shank 2011 (J Pediatr Orthop 31:266) 71.5 ± 6.2 against the window 64–81 above: some 18 % of healthy children lie outside.
    [Fact]
    public void Baumann_WindowLeavesNearlyAFifthOutside()
    {
        var inside = MathNet.Numerics.Distributions.Normal.CDF(71.5, 6.2, 81) - MathNet.Numerics.Distributions.Normal.CDF(71.5, 6.2, 64);
        Assert.Equal(0.824, inside, 0.002);
        Assert.Empty(ViewMeasurements.Ap.Single(m => m.Name == "baumann-angle").DecisionLimits(new Patient(84, Sex.Female)));
    }

    // Teaching page with the obtuse form 140 = 180 − 40; no limit, since a mean of 41.6 puts about 40 % below 40 (J Pediatr Orthop 2008;28:463).
    [Fact]
    public void ShaftCondylarAngle_ObtuseFormStandsBeside_AndNoLimit()
    {
        var definition = ViewMeasurements.Lateral.Single(m => m.Name == "shaft-condylar-angle");
        Assert.Equal("In the obtuse form 140.0 degrees.", definition.NoteBeside(40));
        Assert.Empty(definition.DecisionLimits(new Patient(84, Sex.Male)));
    }

    // Surg Radiol Anat 2007;29:279: mean neck–shaft angle 167.8°, that is 12.2° off the straight line.
    [Fact]
    public void RadialNeckShaft_AcuteAndObtuseForm()
    {
        var angle = Ap(Elbow with { NeckTilt = 12.2 })["radial-neck-shaft-angle"];
        Assert.Equal(12.2, angle, 1e-9);
        Assert.Equal(
            "In the obtuse form 167.8 degrees.",
            ViewMeasurements.Ap.Single(m => m.Name == "radial-neck-shaft-angle").NoteBeside(angle));
    }

    // Trap: a carrying angle of 12° is printed as 168° where the angle is counted from the straight line; valgus stays +.
    [Fact]
    public void CarryingAngle_AcuteAndObtuseForm()
    {
        var angle = Ap(Elbow with { Carrying = 12 })["carrying-angle"];
        Assert.Equal(12, angle, 1e-9);
        Assert.Equal(
            "In the obtuse form 168.0 degrees.",
            ViewMeasurements.Ap.Single(m => m.Name == "carrying-angle").NoteBeside(angle));
    }

    // Geometry: arc centres 22 mm apart on an axis square to the beam separate by 22·sin θ as the humerus turns by θ about its shaft.
    [Theory]
    [InlineData(5, 1.917)]
    [InlineData(10, 3.820)]
    [InlineData(20, 7.524)]
    public void ArcOffset_GrowsWithTheSineOfTheRotation(double degrees, double millimetres)
    {
        var apart = 22 * Math.Sin(degrees * Math.PI / 180);
        var values = Lateral(Elbow with { TrochleaOffset = apart, CapitellumRadius = 9.5 });
        Assert.Equal(millimetres, values["true-lateral.arc-offset"] * 19, 0.01);
    }

    // Geometry: turning about the shaft axis shortens what lies square to it, tan φ′ = tan φ · cos θ; 12° become 11.30° at 20°.
    [Theory]
    [InlineData(0, 12)]
    [InlineData(10, 11.82)]
    [InlineData(20, 11.30)]
    [InlineData(30, 10.43)]
    public void CarryingAngle_OnAFilmRotatedAboutTheShaft(double degrees, double expected)
    {
        var straight = Elbow with { Carrying = 12, Turn = 0 };
        var shortened = Math.Cos(degrees * Math.PI / 180);
        var pixels = straight.Ap().Select(p => p is { } q ? new Point(q.X * shortened, q.Y) : (Point?)null).ToList();
        var values = FilmMeasuring.Exact(LaidLandmarks.Exact(LandmarkSet.Ap, pixels, FilmScale.Of(0.2, 0.2)));
        Assert.Equal(expected, values["carrying-angle"], 0.01);
    }

    // Geometry: spread of the angle between two two-point lines, √(2σ²/L₁² + 2σ²/L₂²); σ = 1 mm on 60 and 15 mm is 5.57°.
    [Theory]
    [InlineData(1, 5.57)]
    [InlineData(0.5, 2.78)]
    public void AngleSpread_OfTwoPointLines(double sigma, double degrees)
    {
        Covariance[] spread = [Covariance.Isotropic(sigma), Covariance.Isotropic(sigma)];
        var options = Geometry.Fits.LineFitOptions.Default;
        var shaft = Geometry.Fits.LineFit.Fit([new(0, 0), new(0, 60)], spread, options);
        var physis = Geometry.Fits.LineFit.Fit([new(0, 70), new(15, 75)], spread, options);
        var length = new Vector(15, 5).Length;
        Assert.Equal(Math.Sqrt(2) * sigma / length * Angles.DegreesPerRadian, Math.Sqrt(physis.AngleVariance) * Angles.DegreesPerRadian, 1e-6);
        physis = Geometry.Fits.LineFit.Fit([new(0, 70), new(15, 70)], spread, options);
        Assert.Equal(degrees, Math.Sqrt(Angles.VarianceBetween(shaft, physis)), 0.01);
    }

    // Geometry: a line through two points 40 mm apart, carried on by 25 mm, moves by σ·√((1 + D/L)² + (D/L)²) = 1.74 σ.
    [Fact]
    public void LineSpread_CarriedBeyondItsPoints()
    {
        var fit = Geometry.Fits.LineFit.Fit(
            [new(0, 0), new(0, 40)], [Covariance.Isotropic(1), Covariance.Isotropic(1)], Geometry.Fits.LineFitOptions.Default);
        Assert.Equal(1.74, Math.Sqrt(fit.VarianceAt(20 + 25)), 0.005);
    }

    private static IReadOnlyDictionary<string, double> Lateral(InventedElbow elbow) =>
        FilmMeasuring.Exact(LaidLandmarks.Exact(LandmarkSet.Lateral, elbow.Lateral(), FilmScale.Of(elbow.RowSpacing, elbow.ColumnSpacing)));

    private static IReadOnlyDictionary<string, double> Ap(InventedElbow elbow) =>
        FilmMeasuring.Exact(LaidLandmarks.Exact(LandmarkSet.Ap, elbow.Ap(), FilmScale.Of(elbow.RowSpacing, elbow.ColumnSpacing)));
}
