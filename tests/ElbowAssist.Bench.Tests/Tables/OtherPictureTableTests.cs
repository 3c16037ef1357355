using ElbowAssist.Bench.Scoring;
using ElbowAssist.Bench.Tables;
using ElbowAssist.Reading;
using ElbowAssist.Testing;

namespace ElbowAssist.Bench.Tests.Tables;

public sealed class OtherPictureTableTests
{
    // Of ten pictures eight are refused, one is taken for an AP without a value, one is measured as a lateral. The upper
    // end of Clopper and Pearson for 0 of n is 1 - 0.025^(1/n).
    [Fact]
    public void Counts_RefusedTakenAndMeasured_WithExactIntervals()
    {
        var unmeasured = SampleReadings.Ap() with { Measurements = [.. SampleReadings.Ap().Measurements.Where(m => m.Value is null)] };
        List<OtherPictureReading> pictures =
        [
            .. Enumerable.Range(0, 4).Select(_ => Picture("knee", "as-taken", SampleReadings.Refused())),
            .. Enumerable.Range(0, 4).Select(_ => Picture("knee", "turned", SampleReadings.Refused())),
            Picture("hinge", "as-taken", unmeasured),
            Picture("hinge", "turned", SampleReadings.Lateral()),
        ];
        var table = OtherPictureTable.Of(pictures);
        Assert.Equal(["all", "as-taken", "turned", "hinge", "knee"], table.Rows.Select(r => (string)r[0]));
        Assert.Equal([10, 8, 1, 1, 0, 0.2], Cells(table, 0, 1, 7));
        Assert.Equal([1, 0.1], Cells(table, 0, 9, 11));
        Assert.Equal("not-an-elbow 8", table.Rows[0][^1]);
        Assert.Equal([5, 4, 0, 1, 0, 0.2], Cells(table, 1, 1, 7));
        Assert.Equal([0, 0.0, 0.0], Cells(table, 4, 9, 12));
        Assert.Equal(1 - Math.Pow(0.025, 1.0 / 8), (double)table.Rows[4][12], 9);
    }

    [Fact]
    public void Load_TakesReadings_AndLeavesOutWhatIsAnElbow()
    {
        using var folder = new TemporaryFolder();
        Write("knee.png", SampleReadings.Refused());
        Write("unknown.png", SampleReadings.Refused());
        Write("elbow.png", SampleReadings.Lateral());
        folder.Write("knee.truth.json", Exchange.Json.TruthJson.Write(Truth("knee.png", new Exchange.Json.NotElbowFacts(1, "knee", "as-taken"))));
        folder.Write("elbow.truth.json", Exchange.Json.TruthJson.Write(Truth("elbow.png", null)));
        var loaded = OtherPictures.Load(
            folder.Path, null, new Pipeline.Judging.FilmJudge(new ToolIdentity("test", "0"), Reading.Limits.AdequacyLimits.Default),
            new Dictionary<string, Pipeline.Calibration.ModelCalibration>(StringComparer.Ordinal));
        Assert.Equal(["knee", "unlabelled"], loaded.Select(p => p.Shows));
        Assert.All(loaded, p => Assert.False(p.IsMeasured));

        void Write(string film, FilmReading reading) =>
            folder.Write(film + ".reading.json", Exchange.Json.ReadingJson.Write(reading with { Image = reading.Image with { File = film } }));
    }

    private static Exchange.Json.TruthFile Truth(string film, Exchange.Json.NotElbowFacts? other) => new()
    {
        Image = SampleReadings.Lateral().Image with { File = film },
        View = new ViewFinding(Anatomy.View.Unknown, new Dictionary<string, double>(StringComparer.Ordinal), null),
        Side = Anatomy.Side.Unknown,
        Patient = Anatomy.Patient.Unknown,
        Context = Anatomy.FilmContext.Unknown,
        Landmarks = [],
        NotElbow = other,
    };

    private static OtherPictureReading Picture(string shows, string version, FilmReading reading) => new(shows, version, reading);

    private static IEnumerable<object> Cells(Table table, int row, int from, int to) => table.Rows[row].Skip(from).Take(to - from);
}
