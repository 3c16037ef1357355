using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Measurements;
using ElbowAssist.Bench.Scoring;
using ElbowAssist.Bench.Tables;
using ElbowAssist.Reading;
using ElbowAssist.Reading.Reasons;
using static ElbowAssist.Bench.Tests.MadeUp;

namespace ElbowAssist.Bench.Tests.Tables;

/// <summary>The tables of what is promised, on films few enough to count by hand.</summary>
public sealed class PromiseTableTests
{
    // Errors 0.01, 0.02, 0.03 and 0.2 within intervals of 0.1: three of four hold; the median error is 0.025.
    [Fact]
    public void Coverage_CountsIntervalsThatHold_AndTheirWidthForTheError()
    {
        ReadFilm[] films =
        [
            .. new[] { 0.01, 0.02, 0.03, 0.2 }.Select(error => Read(Truth((Position, 0.5)), [Given(Position, 0.5 + error, 0.45 + error, 0.55 + error)])),
            Read(Truth((Position, 0.5)), [Withheld(Position, "film-rotated")]),
        ];
        var table = CoverageTable.Of(films);
        Assert.Equal(4, table.Cell("n", "lateral", "all", Position));
        Assert.Equal(3, table.Cell("held", "lateral", "all", Position));
        Assert.Equal(0.75, table.Cell("share", "lateral", "adult", Position));
        Assert.Equal("", table.Cell("meets90to99", "lateral", "all", Position));
        Assert.Equal(0.1, (double)table.Cell("medianWidth", "lateral", "all", Position), 9);
        Assert.Equal(4, (double)table.Cell("widthOverError", "lateral", "all", Position), 6);
    }

    // 0.8 is said twice and comes true once, 0.2 is said twice and comes true once, 0 is said six times and never comes
    // true: (|1.6 - 1| + |0.4 - 1| + 0) / 10.
    [Fact]
    public void Zones_AreHeldAgainstHowOftenTheyComeTrue()
    {
        var said = new Dictionary<string, double>(StringComparer.Ordinal)
        {
            ["capitellum-behind-line"] = 0,
            ["anterior-third"] = 0.2,
            ["middle-third"] = 0.8,
            ["posterior-third"] = 0,
            ["capitellum-before-line"] = 0,
        };
        ReadFilm[] films = [.. new[] { 0.5, 0.1 }.Select(truth => Read(Truth((Position, truth)), [Given(Position, 0.4, 0.3, 0.6) with { Zones = said }]))];
        Assert.Equal(0.12, (double)ZoneTable.Of(films).Cell("calibrationError", "lateral", "all", Position), 9);
    }

    [Fact]
    public void States_AreCountedByTheSideOfTheTrueValue()
    {
        var table = StateTable.OfClasses(Positions);
        Assert.Equal([7, 1, 1, 3, 2], new[] { "n", "measuredRight", "measuredWrong", "eitherSide", "withheld" }.Select(c => table.Cell(c, "lateral", "all", Position)));
    }

    [Fact]
    public void Promises_TellWhatEitherSideComesFrom()
    {
        var table = StateTable.OfPromises(Positions);
        const string Calm = "uninjured, well taken, from 5 y";
        Assert.Equal(3 / 7.0, table.Cell("eitherSideShare", "lateral", Calm, Position));
        Assert.Equal(1 / 7.0, table.Cell("redrawShare", "lateral", Calm, Position));
        Assert.Equal(2 / 7.0, table.Cell("constructionsShare", "lateral", Calm, Position));
        Assert.Equal(1 / 7.0, table.Cell("trulyApartShare", "lateral", Calm, Position));
        Assert.Equal(2 / 7.0, table.Cell("withheldShare", "lateral", Calm, Position));
        Assert.Equal(false, table.Cell("kept", "lateral", Calm, Position));
        const string Behind = "true position below 1/3 or above 2/3";
        Assert.Equal(2, table.Cell("n", "lateral", Behind, Position));
        Assert.Equal(0.5, table.Cell("wrongShare", "lateral", Behind, Position));
        Assert.Equal(1.0, table.Cell("wrongByRedrawsShare", "lateral", Behind, Position));
    }

    [Fact]
    public void Refusals_CountFilmsAndValuesThatTheFilmHas()
    {
        ReadFilm[] films =
        [
            Refused(Truth((Position, 0.5), (ShaftPosition, 0.6)), "not-an-elbow"),
            Read(Truth((Position, 0.5), (ShaftPosition, 0.6)), [Given(Position, 0.5, 0.4, 0.6), Withheld(ShaftPosition, "humeral-levels-missing")]),
            Read(Truth((Position, 0.5)), [Given(Position, 0.5, 0.4, 0.6)]),
        ];
        var table = RefusalTable.Of(films);
        Assert.Equal(1, table.Cell("refused", "lateral", "all"));
        Assert.Equal(5, table.Cell("values", "lateral", "all"));
        Assert.Equal(0.6, table.Cell("withheldShare", "lateral", "all"));
        Assert.Equal("humeral-levels-missing 1; not-an-elbow 1", table.Cell("reasons", "lateral", "all"));
    }

    [Fact]
    public void Adequacy_CountsWellTakenFilmsThatAreTurnedAway()
    {
        var truth = Truth((Position, 0.5));
        ReadFilm[] films =
        [
            Read(truth, [Given(Position, 0.5, 0.4, 0.6)]),
            Read(truth, [], Check("view-error", 20, FilmReasons.FilmRotated)),
            Read(truth, [Given(Position, 0.5, 0.4, 0.6)], Check("exposure.blur", 0.7, FilmReasons.ImageBlurred)),
            Refused(truth, "not-an-elbow"),
            Read(truth with { Simulated = Simulated(480, viewError: 12) }, [], Check("view-error", 20, FilmReasons.FilmRotated)),
            Read(truth with { Simulated = Simulated(480, 2, [], ("fault.cropped", 1)) }, [], Check("view-error", 20, FilmReasons.FilmRotated)),
        ];
        var table = AdequacyTable.Of(films);
        Assert.Equal(4, table.Cell("films", "lateral", "all"));
        Assert.Equal(0.5, table.Cell("share", "lateral", "all"));
    }

    [Fact]
    public void Defects_TellWhatIsMeasuredAnyway_AndWhetherTheyAreNamed()
    {
        var turned = Truth((Position, 0.5)) with { Simulated = Simulated(480, viewError: 25) };
        var noisy = Truth((Position, 0.5)) with { Simulated = Simulated(480, 2, [], ("detectorDoseMicrogray", 0.2), ("detectorEfficiency", 0.5)) };
        ReadFilm[] films =
        [
            Read(turned, [Given(Position, 0.5, 0.4, 0.6)]),
            Read(turned, [Withheld(Position, FilmReasons.FilmRotated)], Check("view-error", 20, FilmReasons.FilmRotated)),
            Read(turned, [Withheld(Position, FilmReasons.FilmRotated)], Check("view-error", 20, FilmReasons.FilmRotated)),
            WithPads(Read(noisy, [], Check("exposure.noise", 2, FilmReasons.ExposureNoisy)), EvidenceState.NotAssessable),
            WithPads(Read(noisy, []), EvidenceState.LookHere),
            Read(Truth((Position, 0.5)) with { Context = FilmContext.Fixation }, [], Check("hardware.seen", 0.9, FilmReasons.HardwareSeen)),
        ];
        var table = DefectTable.Of(films);
        const string Rotated = "rotated by at least 18 degrees";
        Assert.Equal(3, table.Cell("spoiled", "lateral", Rotated));
        Assert.Equal(1, table.Cell("measuredAnyway", "lateral", Rotated));
        Assert.Equal(2 / 3.0, table.Cell("namedShare", "lateral", Rotated));
        const string Noisy = "counted dose below 0.12 µGy";
        Assert.Equal(2, table.Cell("films", "lateral", Noisy));
        Assert.Equal(0.5, table.Cell("anywayShare", "lateral", Noisy));
        Assert.Equal(0.5, table.Cell("namedShare", "lateral", Noisy));
        Assert.Equal(1.0, table.Cell("namedShare", "lateral", "metal"));
        Assert.Equal(0.0, table.Cell("namedShare", "lateral", "no metal (reason falsely named)"));

        static ReadFilm WithPads(ReadFilm film, EvidenceState state) => new(film.Truth, film.Reading with { Evidence = [new Evidence("fat-pad.anterior", state, null)] });
    }

    // Twenty films whose errors are 0.01, 0.02, …, as wide as they err: among the narrowest k the mean error is 0.005 (k + 1).
    [Fact]
    public void Risk_IsTheMeanErrorOfTheNarrowestIntervals()
    {
        ReadFilm[] films = [.. Enumerable.Range(1, 20).Reverse().Select(i => Read(Truth((Position, 0.5)), [Given(Position, 0.5 + (0.01 * i), 0.5, 0.5 + (0.02 * i))]))];
        var rows = RiskTable.Of(films).Rows;
        Assert.Equal(20, rows.Count);
        Assert.All(rows, (row, i) => Assert.Equal(0.005 * (i + 2), (double)row[3], 9));
    }

    /// <summary>
    /// Measured on the right side; on the wrong one; either-side by redraws; by constructions alone, with the true ones
    /// apart and with the own value on the wrong side; withheld; refused.
    /// </summary>
    private static ReadFilm[] Positions =>
    [
        Read(Truth((Position, 0.5)), [Given(Position, 0.52, 0.48, 0.56)]),
        Read(Truth((Position, 0.2)), [Given(Position, 0.42, 0.38, 0.46)]),
        Read(Truth((Position, 0.6)), [Given(Position, 0.62, 0.55, 0.69, MeasurementState.EitherSide, ReasonCodes.IntervalCrossesLimit, ReasonCodes.ConstructionsDiffer)]),
        Read(Truth((Position, 0.6), (ShaftPosition, 0.8)), [Given(Position, 0.6, 0.55, 0.65, MeasurementState.EitherSide, ReasonCodes.ConstructionsDiffer)]),
        Read(Truth((Position, 0.7), (ShaftPosition, 0.8)), [Given(Position, 0.6, 0.55, 0.65, MeasurementState.EitherSide, ReasonCodes.ConstructionsDiffer)]),
        Read(Truth((Position, 0.5)), [Withheld(Position, "film-rotated")]),
        Refused(Truth((Position, 0.5)), "not-an-elbow"),
    ];
}
