using System.Globalization;
using System.Text.RegularExpressions;
using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Anatomy.Measurements;
using ElbowAssist.Exchange.Dicom.Codes;
using ElbowAssist.Exchange.Dicom.Films;
using ElbowAssist.Exchange.Dicom.Format;
using ElbowAssist.Exchange.Dicom.Reports;
using ElbowAssist.Exchange.Tests.Dicom.Support;
using ElbowAssist.Geometry;
using ElbowAssist.Reading;
using ElbowAssist.Testing;

namespace ElbowAssist.Exchange.Tests.Dicom;

/// <summary>What goes into a report comes out again, by our reader and by others.</summary>
public sealed partial class ReportRoundTripTests
{
    private const string ViewersReport = "interop-examples/elbow_sr_resaved_by_adapters.dcm";

    private static readonly DicomSource Source = new DicomFilmReader().Read(new Support.SampleFilm().File()).Source;

    [Fact]
    public void OwnReport_GivesBackPositionsSpreadAndSource()
    {
        foreach (var seed in new[] { 0, 1, 2, 3, 5, 6, 7, 8 })
        {
            var reading = SampleReading.Of(seed);

            var back = StructuredReportReader.Read(Write(reading));

            Assert.Equal((reading.View.Name, Source.SopInstanceUid, false), (back.View, back.FilmSopInstanceUid, back.ByPerson));
            Assert.All(reading.Landmarks.Zip(back.Landmarks), pair =>
            {
                var (sent, got) = pair;
                Assert.Equal((sent.Name, sent.Kind, sent.Position is null), (got.Name, got.Kind, got.Position is null));
                if (sent.Position is { } position)
                {
                    Assert.True(position.DistanceTo(got.Position!.Value) < 1e-3);
                    Assert.Equal(sent.Source, got.Source);
                    Assert.Equal(sent.Visibility, got.Visibility, 0.001);
                    Assert.Equal(sent.Covariance is null, got.Covariance is null);
                    Assert.Equal(sent.Covariance?.XX ?? 0, got.Covariance?.XX ?? 0, 1e-3);
                    Assert.Equal(sent.Covariance?.XY ?? 0, got.Covariance?.XY ?? 0, 1e-3);
                    Assert.Equal(sent.Covariance?.YY ?? 0, got.Covariance?.YY ?? 0, 1e-3);
                }
            });
        }
    }

    [Fact]
    public void AgainstProposals_OnlyMovedLandmarksBecomeTheReaders()
    {
        var reading = SampleReading.Of(1);
        var moved = reading.Landmarks.First(l => l is { Position: not null, Source: LandmarkSource.Model });
        var edited = reading with
        {
            Landmarks = [.. reading.Landmarks.Select(l => l == moved
                ? l with { Position = l.Position!.Value + new Vector(3, -2), Source = LandmarkSource.Reader, Covariance = null }
                : l)],
        };

        var back = StructuredReportReader.Read(Write(edited)).Against(reading.Landmarks);

        Assert.All(reading.Landmarks.Where(l => l.Position is not null).Zip(back.Landmarks.Where(l => l.Position is not null)), pair =>
        {
            if (pair.First == moved)
            {
                Assert.Equal((LandmarkSource.Reader, null), (pair.Second.Source, pair.Second.Covariance));
                Assert.Equal(Math.Sqrt(13), pair.Second.Position!.Value.DistanceTo(moved.Position!.Value), 3);
            }
            else
            {
                Assert.Equal(pair.First, pair.Second);
            }
        });
    }

    [Fact]
    public void RefusedReading_LeavesNoNumberAndNoPlaceInTheReport()
    {
        var report = DicomFile.Parse(Write(SampleReading.Of(4)), DicomLimits.Default).Dataset;
        var items = All(ContentEncoding.Read(report)).ToList();

        Assert.DoesNotContain(items, i => i.ValueType == "SCOORD");
        Assert.DoesNotContain(items, i => i.ValueType == "NUM" && i.Relationship != ContentItem.HasAcquisitionContext);
        Assert.Contains(items, i => i.Text?.Contains("look for a fracture before blaming the view", StringComparison.Ordinal) == true);
        Assert.Throws<DicomFormatException>(() => StructuredReportReader.Read(Write(SampleReading.Of(4))));
    }

    [Fact]
    public void EveryText_SaysWhatItIs_AndReassuresNobody()
    {
        for (var seed = 0; seed < 20; seed++)
        {
            var reading = SampleReading.Of(seed);
            var items = All(ContentEncoding.Read(DicomFile.Parse(Write(reading), DicomLimits.Default).Dataset)).ToList();

            Assert.All(items.Where(i => i.Text is not null), i => ForbiddenWords.AssertNone(i.Text!, "the report"));
            Assert.All(items.Where(i => StandardCodes.MeasurementGroup.Matches(i.Concept)), group =>
                Assert.StartsWith("Proposal, second look", group.Children.Single(c => StandardCodes.Comment.Matches(c.Concept)).Text, StringComparison.Ordinal));
            Assert.Equal(Caution.Text, items.Last(i => StandardCodes.Comment.Matches(i.Concept)).Text);
        }
    }

    [Fact]
    public void SameReading_IsTheSameObject()
    {
        string Uid(FilmReading reading, DateTimeOffset when) =>
            DicomFile.Parse(StructuredReport.Write(reading, Source, new(when)), DicomLimits.Default).Dataset.Text(Tag.SopInstanceUid)!;
        var noon = new DateTimeOffset(2026, 4, 1, 12, 0, 0, TimeSpan.Zero);

        Assert.Equal(Uid(SampleReading.Of(1), noon), Uid(SampleReading.Of(1), noon.AddHours(1)));
        Assert.NotEqual(Uid(SampleReading.Of(1), noon), Uid(SampleReading.Of(2), noon));
    }

    [Fact]
    public void PrivateCodes_AreShortAndEachUsedOnce()
    {
        var codes = LandmarkSet.Lateral.Landmarks.Concat(LandmarkSet.Ap.Landmarks).Select(l => l.Name).Distinct()
            .Select(PrivateCodes.Landmark)
            .Concat(ViewMeasurements.Of(View.Lateral).Concat(ViewMeasurements.Of(View.Ap)).Select(m => m.Name).Distinct().Select(PrivateCodes.Measurement))
            .ToList();

        // Derived codes are for names that come later; a measurement of today has a code of its own that never changes.
        Assert.DoesNotContain(codes, c => c.Value.StartsWith("M-", StringComparison.Ordinal));
        Assert.All(codes, c => Assert.InRange(c.Value.Length, 1, 16));
        Assert.All(codes, c => Assert.InRange(c.Meaning.Length, 1, 64));
        Assert.Equal(codes.Count, codes.Select(c => c.Value).Distinct().Count());
    }

    [ToolFact("python3", "dsrdump")]
    public void OtherReaders_SeeTheSameNumbersAndPlaces()
    {
        using var scratch = new Scratch();
        var reading = SampleReading.Of(1);
        var path = scratch.Write("report.dcm", Write(reading));
        var items = All(ContentEncoding.Read(DicomFile.Parse(File.ReadAllBytes(path), DicomLimits.Default).Dataset)).ToList();
        var numbers = items.Where(i => i.ValueType == "NUM").Select(i => (i.Concept!.Meaning, i.Number!.Value)).ToList();
        var places = items.Where(i => i.ValueType == "SCOORD").SelectMany(i => i.Points).ToList();

        var pydicom = Tool.Run("python3", Path.Combine(AppContext.BaseDirectory, "report_numbers.py"), path).Split('\n', StringSplitOptions.RemoveEmptyEntries);
        var dcmtk = Tool.Run("dsrdump", "+Pl", path);

        Assert.Equal(numbers, pydicom.Where(l => l.StartsWith("NUM", StringComparison.Ordinal)).Select(l => l.Split('|')).Select(f => (f[1], Number(f[2]))));
        Assert.Equal(
            places.SelectMany(p => new[] { p.X, p.Y }),
            pydicom.Where(l => l.StartsWith("SCOORD", StringComparison.Ordinal)).SelectMany(l => l.Split('|').Skip(2)).Select(Number));
        Assert.Equal(numbers, DumpedNumber().Matches(dcmtk).Select(m => (m.Groups["name"].Value, Number(m.Groups["value"].Value))));
        foreach (var measurement in reading.Measurements.Where(m => m.Value is not null))
        {
            Assert.Contains(numbers, n => n.Meaning == PrivateCodes.Measurement(measurement.Name).Meaning && Math.Abs(n.Value - measurement.Value!.Value) < 1e-9);
        }
    }

    [SharedDataFact(ViewersReport)]
    public void ReportSavedByABrowserViewer_GivesItsPlaces()
    {
        var file = File.ReadAllBytes(SharedData.Find(ViewersReport)!);
        var root = ContentEncoding.Read(DicomFile.Parse(file, DicomLimits.Default).Dataset);

        // Its private codes are from a trial, so that no landmark of this project is found; its places are.
        var points = All(root).Where(i => i is { ValueType: "SCOORD", Graphic: "POINT" }).Select(i => i.Points[0]).ToList();
        Assert.Equal(new Point(282.5, 412.5), points[0]);
        Assert.Throws<DicomFormatException>(() => StructuredReportReader.Read(file));
    }

    private static byte[] Write(FilmReading reading) => StructuredReport.Write(reading, Source, new(new DateTimeOffset(2026, 4, 1, 10, 17, 0, TimeSpan.Zero)));

    private static IEnumerable<ContentItem> All(ContentItem item) => item.Children.SelectMany(All).Prepend(item);

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    [GeneratedRegex("""NUM:\(,,"(?<name>[^"]*)"\)="(?<value>[^"]*)" """, RegexOptions.ExplicitCapture)]
    private static partial Regex DumpedNumber();
}
