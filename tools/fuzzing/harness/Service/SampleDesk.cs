using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Cli.Serving;
using ElbowAssist.Exchange.Json.Coco;
using ElbowAssist.Exchange.Json.Facts;
using ElbowAssist.Imaging.Files;
using ElbowAssist.Reading;
using ElbowAssist.Reading.Assembly;
using ElbowAssist.Testing;
using ElbowAssist.Web.Films;
using DicomSample = ElbowAssist.Exchange.Tests.Dicom.Support.SampleFilm;

namespace ElbowAssist.Fuzzing.Service;

/// <summary>
/// The program's own desk with two small films, whatever is sent: decoders are targets of their own, and a request that got
/// as far as its film shall reach what comes after. The landmarks on them are laid beforehand, which needs no network.
/// </summary>
internal sealed class SampleDesk : IFilmDesk, IDisposable
{
    private const int Tenth = 10;
    private const int Width = SampleLandmarks.Width / Tenth;
    private const int Height = SampleLandmarks.Height / Tenth;

    private static readonly Landmark[] Whole = [.. SampleLandmarks.Lateral().Select(l => l with { Position = l.Position is { } p ? new(p.X / Tenth, p.Y / Tenth) : null, Covariance = null })];
    private static readonly Landmark[] Few = [.. Whole.Select(l => l.Name is LandmarkNames.HumerusWaist or LandmarkNames.HumerusFossaRoof ? l : l with { Position = null, Visibility = 0 })];

    private static readonly byte[] Picture = PlainPng.Grey16(Width, Height, (x, y) => (ushort)(300 * (x + y)));
    private static readonly byte[] Dicom = new DicomSample { Width = Width, Height = Height }.File();

    private readonly FilmDesk desk = new(null);

    /// <summary>Sent as the first byte, it stands for a DICOM film with all its landmarks; a picture has too few to measure on, which is quick.</summary>
    public const byte ForDicom = (byte)'D';

    /// <summary>Sent as the first byte, it stands for a file that is no film.</summary>
    public const byte ForNone = (byte)'N';

    public ToolIdentity Tool => desk.Tool;

    public OpenedFilm Open(ReadOnlyMemory<byte> file, string name, IReadOnlyList<FilmFacts> stated) => file.Span[0] == ForNone
        ? throw new UnreadableFilmException(name, "is no film.")
        : desk.Open(file.Span[0] == ForDicom ? Dicom : Picture, name, stated);

    public ReadingInput Propose(OpenedFilm film, ReadOnlyMemory<byte>? placements, CancellationToken cancellation) => desk.Propose(
        film,
        CocoKeypoints.Write([new CocoFilm(
            film.Radiograph.Facts.FileName, Width, Height, Anatomy.View.Lateral, film.Dicom is null ? Few : Whole)]),
        cancellation);

    public void Dispose() => desk.Dispose();
}
