using System.Xml.Linq;
using ElbowAssist.Exchange.Dicom.Format;
using ElbowAssist.Exchange.Dicom.Reports;
using ElbowAssist.Imaging.Files;
using ElbowAssist.Testing;
using DicomSample = ElbowAssist.Exchange.Tests.Dicom.Support.SampleFilm;

namespace ElbowAssist.EndToEnd;

/// <summary>The short program for viewer developers, on the demo film put into a DICOM object.</summary>
public sealed class OverlaySampleTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    [Fact]
    public void Sample_ReadsAFilmAndDrawsItsOverlay()
    {
        var film = folder.Write("film.dcm", DemoFilm());

        var run = CommandLine.RunProgram("ElbowAssist.Samples.Overlay.dll", film, Path.Combine(Repository.Root, "models"));

        Assert.Equal((0, ""), (run.ExitCode, run.Error));
        Assert.Matches(@"anterior-humeral-line\.position: -?[0-9]+\.[0-9]{2}\n", run.Output);
        Assert.EndsWith("Nothing here excludes a fracture.", run.Output.TrimEnd(), StringComparison.Ordinal);
        var overlay = XDocument.Load(folder.File("film.dcm.overlay.svg")).Root!;
        Assert.Equal("0 0 768 768", overlay.Attribute("viewBox")!.Value);
        Assert.Contains(overlay.Descendants(), e => e.Name.LocalName is "line" or "path" or "polyline");
        Assert.NotEmpty(StructuredReportReader.Read(File.ReadAllBytes(folder.File("film.dcm.sr.dcm"))).Landmarks);
    }

    public void Dispose() => folder.Dispose();

    private static byte[] DemoFilm()
    {
        var film = FilmFile.Read(Path.Combine(Repository.Root, "src", "ElbowAssist.Cli", "Demo", "adult-film", "lateral.png"));
        var pixels = new byte[film.Pixels.Length * 2];
        Buffer.BlockCopy(film.Pixels.ToArray(), 0, pixels, 0, pixels.Length);
        return new DicomSample
        {
            BitsStored = 16,
            With = b => b.UInt16(Tag.Rows, film.Height).UInt16(Tag.Columns, film.Width).Bytes(Tag.PixelData, Vr.OW, pixels),
        }.File();
    }
}
