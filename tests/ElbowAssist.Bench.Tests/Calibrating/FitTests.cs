using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Anatomy.Measurements;
using ElbowAssist.Bench.Calibrating;
using ElbowAssist.Exchange.Json;
using ElbowAssist.Geometry;
using ElbowAssist.Pipeline.Calibration;
using static ElbowAssist.Bench.Tests.MadeUp;

namespace ElbowAssist.Bench.Tests.Calibrating;

/// <summary>What is fitted on calibration films, on films drawn from laws that are known.</summary>
public sealed class FitTests
{
    // Errors over half-widths are 0.1, 0.2, … 3.9; of 39 scores the 38th holds 95 of 100 (rank ⌈40 · 0.95⌉).
    [Fact]
    public void IntervalFactor_IsTheConformalQuantile_OfIntervalsBeforeTheyWereStretched()
    {
        var films = Enumerable.Range(1, 39).Select(i => Judged(0.1 * i, 480)).ToList();
        var factor = Assert.Single(IntervalFit.Of(films, ModelCalibration.None));
        Assert.Equal((Position, 0, null, 3.8, 39), (factor.Measurement, factor.FromMonths, factor.ToMonths, factor.Factor, factor.Films));

        var stretched = ModelCalibration.None with { Intervals = [new IntervalFactor(Position, 0, null, 2, 39)] };
        Assert.Equal(7.6, Assert.Single(IntervalFit.Of(films, stretched)).Factor, 9);
    }

    [Fact]
    public void IntervalFactors_OfABand_NeedEnoughFilms()
    {
        List<(CalibrationFilm, Reading.FilmReading)> films = [.. Enumerable.Range(0, 130).Select(_ => Judged(2, 480)), .. Enumerable.Range(0, 119).Select(_ => Judged(5, 40))];
        var calibration = ModelCalibration.None with { Intervals = IntervalFit.Of(films, ModelCalibration.None) };
        Assert.Equal(2, calibration.FactorsFor(480)[Position]);
        Assert.Equal(5, calibration.FactorsFor(40)[Position]);
        Assert.Equal(5, calibration.FactorsFor(null)[Position]);
        Assert.DoesNotContain(calibration.Intervals, i => i.ToMonths == 192);
        Assert.Empty(IntervalFit.Of([.. films.Take(19)], ModelCalibration.None));
    }

    // Redraws say 0.99 where the zone is met by 80 of 100: what is told afterwards must be near 0.8.
    [Fact]
    public void ZoneTemperature_MakesProbabilitiesComeTrue()
    {
        var said = new Dictionary<string, double>(StringComparer.Ordinal)
        {
            ["capitellum-behind-line"] = 0,
            ["anterior-third"] = 0,
            ["middle-third"] = 0.99,
            ["posterior-third"] = 0.01,
            ["capitellum-before-line"] = 0,
        };
        var films = Enumerable.Range(0, 200).Select(i =>
        {
            var truth = Truth((Position, i % 5 == 0 ? 0.8 : 0.5));
            return (Proposed(truth), Read(truth, [Given(Position, 0.6, 0.5, 0.7) with { Zones = said }]).Reading);
        }).ToList();
        var table = Assert.Single(ZoneFit.Of(films));
        Assert.Equal((Position, 200), (table.Measurement, table.Films));
        Assert.Equal(161 / 205.0, table.Prior["middle-third"], 4);
        Assert.True(table.Temperature > 1.5);
        var told = new ZoneCorrection(table.Temperature, table.Mix, table.Prior).Apply(said);
        Assert.Equal(0.8, told["middle-third"], 0.01);
        Assert.Empty(ZoneFit.Of([.. films.Take(49)]));
    }

    // Every error is one standard deviation along x that all landmarks of the film share, and one of its own along either
    // axis: in units of the stated spread the covariance is 1 between landmarks along x, 2 within along x, 1 within along y.
    // (Errors beyond 4 count as 4, which takes off some hundredths.)
    [Fact]
    public void SharedSpread_FindsTheMoveThatLandmarksShare()
    {
        var random = new Random(5);
        double Normal() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        string[] names = ["humerus.anterior.1", "humerus.anterior.2", "humerus.anterior.3", "humerus.posterior.1"];
        var films = Enumerable.Range(0, 1500).Select(_ =>
        {
            var (shared, places) = (Normal(), names.Select((n, i) => (Name: n, At: new Point(100 + (20 * i), 50))).ToList());
            var truth = Truth() with { Landmarks = [.. places.Select(p => new TrueLandmark(p.Name, LandmarkKind.Contour, p.At, null, 1))] };
            return Proposed(truth, [.. places.Select(p => Proposal(p.Name, new Point(p.At.X + (0.5 * (shared + Normal())), p.At.Y + (0.5 * Normal())), deviation: 0.5))]);
        }).ToList();
        var spread = SpreadFit.Of(films, LandmarkSet.Lateral);
        var joint = spread.Joint([.. names.Select(n => Proposal(n, new Point(0, 0)))], Similarity.Identity);
        Assert.Equal(2, joint[0, 0], 0.25);
        Assert.Equal(1, joint[1, 1], 0.15);
        Assert.Equal(1, joint[0, 2], 0.2);
        Assert.Equal(1, joint[2, 6], 0.2);
        Assert.Equal(0, joint[0, 1], 0.15);
        Assert.Equal(0, joint[1, 3], 0.15);
    }

    [Fact]
    public void Features_TellWhatIsUnlikeTheFilmsTheyWereFittedOn_AndMetal()
    {
        var random = new Random(9);
        double[] Drawn(double first) => [first + random.NextDouble(), .. Enumerable.Range(0, 7).Select(_ => random.NextDouble())];
        var plain = Enumerable.Range(0, 200).Select(_ => Proposed(Truth(), features: Drawn(0)));
        var metal = Enumerable.Range(0, 40).Select(_ => Proposed(Truth() with { Context = FilmContext.Fixation }, features: Drawn(3)));
        var model = FeatureFit.Of([.. plain, .. metal])!;
        Assert.InRange(model.Distance(Drawn(0))!.Value, 0.3, 2);
        Assert.True(model.Distance([0, 9, 0, 9, 0, 9, 0, 9])!.Value > 5);
        Assert.True(model.Probability("metal", Drawn(3))!.Value > 0.9);
        Assert.True(model.Probability("metal", Drawn(0))!.Value < 0.1);
        Assert.Null(model.Probability("cast", Drawn(0)));
        Assert.Null(FeatureFit.Of([.. plain.Take(19)]));
    }

    private static (CalibrationFilm, Reading.FilmReading) Judged(double score, int months)
    {
        var truth = Truth((Position, 0.5 + score)).Aged(months);
        return (Proposed(truth), Read(truth, [Given(Position, 0.5, -0.5, 1.5)]).Reading);
    }
}
