using ElbowAssist.Anatomy;
using ElbowAssist.Bench.Calibrating;
using ElbowAssist.Reading;
using static ElbowAssist.Bench.Tests.MadeUp;

namespace ElbowAssist.Bench.Tests.Calibrating;

/// <summary>Rules by which limits are chosen, on figures whose limit can be worked out beforehand.</summary>
public sealed class LimitChoiceTests
{
    // Half of 40 figures are 1, half are e: their logarithms have mean 0.5 and standard deviation 0.5 · √(40/39) = 0.50637;
    // R 4.2.2: exp(0.5 + qt(0.997, 39) * 0.5 * sqrt(40/39) * sqrt(1 + 1/40)) = 7.31546.
    [Fact]
    public void Likeness_LetsThreeInThousandWellTakenFilmsGoBeyond()
    {
        var good = Enumerable.Range(0, 40).Select(i => Film(Truth(), Check("features.distance", i % 2 == 0 ? 1 : Math.E))).ToList();
        var poor = Enumerable.Range(0, 40).Select(_ => Film(Truth() with { Simulated = Simulated(480, viewError: 25) }, Check("features.distance", 50)));
        var chosen = LimitChoice.Of([.. good, .. poor], View.Lateral, "made-up films");
        Assert.Equal(7.32, chosen["features.distance.lateral"].Value);
        Assert.Contains("from 40 well-taken films of made-up films", chosen["features.distance.lateral"].Origin, StringComparison.Ordinal);
        Assert.DoesNotContain("features.distance.ap", chosen.Keys);
        Assert.DoesNotContain("shape.ulna.lateral", chosen.Keys);
    }

    // Films within 8 degrees read at most 6, films beyond 18 at least 12: every limit of the grid from 6 to 11.875 divides
    // them without an error, and their middle is taken.
    [Fact]
    public void ViewError_DividesWellTakenFromPoorFilms()
    {
        var films = Enumerable.Range(0, 20).Select(i => Film(Truth(), Check("view-error", 6.0 * i / 19)))
            .Concat(Enumerable.Range(0, 10).Select(i => Film(Truth() with { Simulated = Simulated(480, viewError: 20) }, Check("view-error", 12 + i)))).ToList();
        Assert.Equal(8.94, LimitChoice.Of(films, View.Lateral, "made-up films")["view-error.lateral"].Value);
    }

    [Theory]
    [InlineData(0.9999, 10, true)]
    [InlineData(0.5, 10, false)]
    public void Metal_IsToldOnlyWhereFewFilmsWithoutItLookLikeIt(double withMetal, int films, bool isTold)
    {
        var without = Enumerable.Range(0, 101).Select(i => Film(Truth(), Check("hardware.seen", 0.01 * i * 0.99)));
        var with = Enumerable.Range(0, films).Select(_ => Film(Truth() with { Context = FilmContext.Fixation }, Check("hardware.seen", withMetal)));
        var (value, origin) = LimitChoice.Of([.. without, .. with], View.Lateral, "made-up films")["hardware.seen.lateral"];
        Assert.Equal(isTold ? 0.98 : 1, value);
        Assert.StartsWith(isTold ? "chosen: exceeded" : "chosen: never met", origin, StringComparison.Ordinal);
    }

    [Fact]
    public void FewerThanFifteenWellTakenFilms_ChooseNothing() =>
        Assert.Empty(LimitChoice.Of([.. Enumerable.Range(0, 14).Select(_ => Film(Truth(), Check("features.distance", 1)))], View.Lateral, "made-up films"));

    private static (CalibrationFilm Film, FilmReading Reading) Film(Exchange.Json.TruthFile truth, AdequacyCheck check) =>
        (Proposed(truth), Read(truth, [], check).Reading);
}
