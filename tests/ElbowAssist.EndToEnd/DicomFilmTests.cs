using System.Diagnostics;
using ElbowAssist.Anatomy;
using ElbowAssist.Exchange.Dicom.Format;
using ElbowAssist.Exchange.Json;
using ElbowAssist.Reading;
using ElbowAssist.Testing;
using DicomSample = ElbowAssist.Exchange.Tests.Dicom.Support.SampleFilm;

namespace ElbowAssist.EndToEnd;

/// <summary>DICOM films from the command line: facts out of the header, reports beside the reading, reports back in.</summary>
public sealed class DicomFilmTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    [Fact]
    public void CalibratedAndMagnifiedFilm_GiveTheSameMillimetres_AndAFilmWithoutSpacingNone()
    {
        var calibrated = Read("calibrated", b => b.Decimal(Tag.PixelSpacing, 0.125, 0.125)
            .Text(Tag.PixelSpacingCalibrationType, "FIDUCIAL").Text(Tag.PixelSpacingCalibrationDescription, "ball"));
        var magnified = Read("magnified", b => b.Decimal(Tag.ImagerPixelSpacing, 0.15, 0.15).Decimal(Tag.EstimatedRadiographicMagnificationFactor, 1.2));
        var without = Read("without", b => b.Empty(Tag.ImagerPixelSpacing));
        var detector = Read("detector", _ => { });

        double? Gap(FilmReading reading) => reading.Measurements.Single(m => m.Name == "ulnohumeral-gap").Value;
        Assert.Equal(0.125, calibrated.Image.RowSpacingMm!.Value, 9);
        Assert.Equal(0.125, magnified.Image.RowSpacingMm!.Value, 9);
        Assert.Contains("magnification 1.2", magnified.Image.SpacingSource, StringComparison.Ordinal);
        Assert.NotNull(Gap(calibrated));
        Assert.Equal(Gap(calibrated)!.Value, Gap(magnified)!.Value, 9);
        Assert.All([without, detector], reading =>
        {
            Assert.Null(reading.Image.RowSpacingMm);
            Assert.DoesNotContain(reading.Measurements, m => m.Unit == "mm" && m.Value is not null);
        });
        Assert.Contains("magnification not corrected", detector.Image.SpacingSource, StringComparison.Ordinal);
        Assert.Equal("none", without.Image.SpacingSource);
    }

    [Fact]
    public void Report_TakenBackAsLandmarks_GivesTheSameMeasurements()
    {
        var first = Read("film", _ => { });
        var run = CommandLine.Run("read", folder.File("film.dcm"), "--landmarks", folder.File("film", "film.dcm.sr.dcm"), "--out", folder.File("again"));

        var again = ReadingJson.Read(File.ReadAllBytes(folder.File("again", "film.dcm.reading.json")));
        Assert.Equal((0, ""), (run.ExitCode, run.Error));
        Assert.Equal((Side.Left, 84, Sex.Female), (again.Side, again.Patient.AgeMonths, again.Patient.Sex));
        Assert.Contains(first.Measurements, m => m.Value is not null);
        Assert.All(first.Measurements.Zip(again.Measurements).Where(p => p.First.Value is not null && p.First.Name != "ulnohumeral-gap"), p =>
            Assert.Equal(p.First.Value!.Value, p.Second.Value!.Value, 3));
    }

    [Fact]
    public void ReportOfAnotherFilm_IsTurnedAway()
    {
        Read("film", _ => { });
        folder.Write("other.dcm", new DicomSample { Width = Width, Height = Height, Seed = 9 }.File());

        var run = CommandLine.Run("read", folder.File("other.dcm"), "--landmarks", folder.File("film", "film.dcm.sr.dcm"), "--out", folder.File("again"));

        Assert.Equal(2, run.ExitCode);
        Assert.Contains("about another film", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void ContradictingSides_StopTheExport_UntilAnOptionSettlesThem()
    {
        Action<DatasetBuilder> sides = b => b.Text(Tag.ImageLaterality, "L").Text(Tag.Laterality, "R");
        var film = folder.Write("film.dcm", new DicomSample { Width = Width, Height = Height, With = sides }.File());
        string[] arguments = ["read", film, "--landmarks", PlacedFilm.Landmarks(folder), "--out", folder.File("out"), "--dicom"];

        var stopped = CommandLine.Run(arguments);
        Assert.Equal(1, stopped.ExitCode);
        Assert.Contains("--side", stopped.Error, StringComparison.Ordinal);
        Assert.False(File.Exists(folder.File("out", "film.dcm.sr.dcm")));

        var settled = CommandLine.Run([.. arguments, "--side", "left"]);
        Assert.Equal(0, settled.ExitCode);
        Assert.True(File.Exists(folder.File("out", "film.dcm.sr.dcm")));
    }

    [Fact]
    public void WatchedFolder_ReadsAFilmThatArrives_AndStopsWhenTold()
    {
        using var process = CommandLine.Start("watch", folder.Path);
        try
        {
            Assert.StartsWith("Watching", process.StandardOutput.ReadLine(), StringComparison.Ordinal);
            folder.Write("film.dcm", new DicomSample { Width = Width, Height = Height }.File());
            Assert.StartsWith("film.dcm: ", process.StandardOutput.ReadLine(), StringComparison.Ordinal);
            Assert.True(File.Exists(folder.File("film.dcm.reading.json")));
            Assert.True(File.Exists(folder.File("film.dcm.sr.dcm")));
        }
        finally
        {
            using var interrupt = Process.Start("kill", ["-TERM", process.Id.ToString(System.Globalization.CultureInfo.InvariantCulture)]);
            interrupt.WaitForExit();
            if (!process.WaitForExit(TimeSpan.FromSeconds(60)))
            {
                process.Kill();
            }
        }

        Assert.Equal(0, process.ExitCode);
    }

    public void Dispose() => folder.Dispose();

    private const int Width = SampleLandmarks.Width;
    private const int Height = SampleLandmarks.Height;

    private FilmReading Read(string name, Action<DatasetBuilder> with)
    {
        var film = folder.Write(name + ".dcm", new DicomSample { Width = Width, Height = Height, With = with }.File());
        string[] facts = name == "film" ? [] : ["--age", "34", "--context", "after-reduction"];
        var run = CommandLine.Run(["read", film, "--landmarks", PlacedFilm.Landmarks(folder), "--out", folder.File(name), "--dicom", .. facts]);
        Assert.Equal(0, run.ExitCode);
        return ReadingJson.Read(File.ReadAllBytes(folder.File(name, name + ".dcm.reading.json")));
    }
}
