using System.Text.Json;
using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Exchange.Dicom.Films;
using ElbowAssist.Exchange.Dicom.Format;
using ElbowAssist.Exchange.Dicom.Reports;
using ElbowAssist.Exchange.Tests.Dicom.Support;
using ElbowAssist.Geometry;
using ElbowAssist.Reading;
using ElbowAssist.Reading.Assembly;
using ElbowAssist.Testing;
using SampleFilm = ElbowAssist.Exchange.Tests.Dicom.Support.SampleFilm;

namespace ElbowAssist.Browser;

/// <summary>
/// The viewer sample in real Chromium: Cornerstone3D 5.14.0 and its own report adapters open our report as annotations
/// that can be moved, and what they save comes back as a reader's placements.
/// </summary>
public sealed class ViewerSampleTests
{
    private static readonly string Sample = Path.Combine(Repository.Root, "tools", "samples", "viewer");

    [ToolFact("node", "npm", "chromium")]
    public void ReportOpensAtExactPlaces_AndComesBackWithTheReadersMove()
    {
        Build();
        using var scratch = new Scratch();
        var film = new SampleFilm { Width = SampleLandmarks.Width, Height = SampleLandmarks.Height }.File();
        var source = new DicomFilmReader().Read(film).Source;
        var reading = Measure(SampleLandmarks.Lateral());
        var report = StructuredReport.Write(reading, source, new ReportOptions(new DateTimeOffset(2026, 4, 1, 10, 17, 0, TimeSpan.Zero)));

        using var shown = JsonDocument.Parse(Tool.Run(
            "node", Path.Combine(AppContext.BaseDirectory, "drive.mjs"), Sample, scratch.Write("film.dcm", film), scratch.Write("report.dcm", report), scratch["saved.dcm"]));

        var laid = reading.Landmarks.Where(l => l.Position is not null).ToList();
        var probes = shown.RootElement.GetProperty("opened").EnumerateArray().Where(a => a.GetProperty("tool").GetString() == "Probe").ToList();
        Assert.Equal(laid.Count, probes.Count);
        Assert.All(laid.Zip(probes), pair =>
        {
            var place = Place(pair.Second);
            Assert.True(place.DistanceTo(pair.First.Position!.Value) <= 0.001, $"{pair.First.Name}: {place}");
            Assert.StartsWith("Proposal, second look", pair.Second.GetProperty("label").GetString(), StringComparison.Ordinal);
        });
        Assert.Equal(
            reading.Measurements.Count(m => m.Value is not null && reading.Lines.Any(l => l.Name == m.Name)),
            shown.RootElement.GetProperty("opened").GetArrayLength() - probes.Count);
        Assert.True(shown.RootElement.GetProperty("drawn").GetInt32() >= probes.Count, "the annotations must be drawn");

        var back = StructuredReportReader.Read(File.ReadAllBytes(scratch["saved.dcm"]));

        Assert.True(back.ByPerson);
        Assert.Equal((source.SopInstanceUid, reading.View.Name), (back.FilmSopInstanceUid, back.View));
        Assert.All(back.Landmarks, l => Assert.Equal(LandmarkSource.Reader, l.Source));
        var expected = laid.Select((l, i) => i == 0 ? l.Position!.Value + new Vector(3.25, -1.5) : l.Position!.Value);
        Assert.All(back.Landmarks.Where(l => l.Position is not null).Zip(expected), p => Assert.True(p.First.Position!.Value.DistanceTo(p.Second) <= 0.001));
        AssertRecomputed(reading, Measure(back.Landmarks), expected.ToList());
        Assert.Equal(laid[0].Name, Assert.Single(back.Against(reading.Landmarks).Landmarks, l => l.Position is not null && !laid.Contains(l)).Name);
    }

    /// <summary>No number is taken from the saved report: all follow from the places, those on the moved landmark change.</summary>
    private static void AssertRecomputed(FilmReading before, FilmReading after, IReadOnlyList<Point> places)
    {
        var laid = SampleLandmarks.Lateral(LandmarkSource.Reader).Where(l => l.Position is not null).Zip(places, (l, p) => l with { Position = p, Covariance = null, Visibility = 1 });
        var expected = Measure([.. laid]);
        Assert.All(expected.Measurements.Zip(after.Measurements), pair =>
        {
            Assert.Equal(pair.First.Value is null, pair.Second.Value is null);
            Assert.Equal(pair.First.Value ?? 0, pair.Second.Value ?? 0, 3);
        });
        Assert.Contains(before.Measurements.Zip(after.Measurements), p => p.First.Value is { } old && p.Second.Value is { } now && Math.Abs(old - now) > 1e-3);
        Assert.All(after.Landmarks.Where(l => l.Position is not null), l => Assert.Equal(LandmarkSource.Reader, l.Source));
    }

    private static FilmReading Measure(IReadOnlyList<Landmark> landmarks) => ReadingAssembler.Default.Assemble(new ReadingInput
    {
        Tool = new ToolIdentity("ElbowAssist", "0.1.0"),
        Image = new ImageFacts("film.dcm", SampleLandmarks.Width, SampleLandmarks.Height, null, null, "none", new string('c', 64)),
        View = new ViewFinding(View.Lateral, new Dictionary<string, double>(StringComparer.Ordinal), null),
        Patient = new Patient(34 * 12, Sex.Female),
        Landmarks = landmarks,
    });

    private static void Build()
    {
        if (!Directory.Exists(Path.Combine(Sample, "node_modules", "playwright-core")))
        {
            Tool.Run("npm", "ci", "--prefix", Sample, "--silent");
        }

        Tool.Run("npm", "run", "build", "--prefix", Sample, "--silent");
    }

    private static Point Place(JsonElement annotation)
    {
        var point = annotation.GetProperty("points")[0];
        return new Point(point[0].GetDouble(), point[1].GetDouble());
    }
}
