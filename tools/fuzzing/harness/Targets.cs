using System.Text;
using ElbowAssist.Batch.Queue;
using ElbowAssist.Batch.Results;
using ElbowAssist.Exchange;
using ElbowAssist.Exchange.Dicom.Films;
using ElbowAssist.Exchange.Dicom.Format;
using ElbowAssist.Exchange.Dicom.Reports;
using ElbowAssist.Exchange.Json;
using ElbowAssist.Exchange.Json.Coco;
using ElbowAssist.Exchange.Json.Facts;
using ElbowAssist.Exchange.Json.Studies;
using ElbowAssist.Fuzzing.Service;
using ElbowAssist.Imaging.Files;
using ElbowAssist.Phantom.Mesh;
using ElbowAssist.Phantom.Mesh.Surfaces;
using ElbowAssist.Pipeline.Proposals;
using ElbowAssist.Reading;
using ElbowAssist.Reading.Limits;
using ElbowAssist.Store;
using ElbowAssist.Store.Entries;

namespace ElbowAssist.Fuzzing;

/// <summary>
/// Every parser of what comes from outside, by name. The first byte of an input picks one in the order given here; what a
/// parser may say to a bad file is caught, everything else is a find.
/// </summary>
internal static class Targets
{
    private static readonly FilmFileLimits SmallFilms = new() { FileBytes = 1 << 20, Pixels = 200_000, DecodedBytes = 1 << 21 };
    private static readonly DicomLimits SmallDicom = new() { MaxBytes = 1 << 20, MaxPixels = 200_000 };
    private static readonly ToolIdentity Tool = new("fuzzing", "0");

    /// <summary>New ones go to the end: inputs of the corpus name them by their place.</summary>
    public static IReadOnlyList<(string Name, Action<byte[]> Parse)> All { get; } =
    [
        ("image", f => Said<UnreadableFilmException>(() => FilmFile.Decode(f, "film", SmallFilms))),
        ("dicom", f => Said<DicomFormatException>(() => new DicomFilmReader(null, SmallDicom).Read(f))),
        ("report", f => Said<DicomFormatException>(() => StructuredReportReader.Read(f, SmallDicom))),
        ("sidecar", f => Said<ExchangeFormatException>(() => SidecarJson.Read(f))),
        ("coco", f => Said<ExchangeFormatException>(() => CocoKeypoints.Read(f))),
        ("coco-set", f => Said<ExchangeFormatException>(() => CocoSetReader.Read(f))),
        ("measurements-body", Bodies.Measure),
        ("reading", f => Said<ExchangeFormatException>(() => ReadingJson.Read(f))),
        ("truth", f => Said<ExchangeFormatException>(() => TruthJson.Read(f))),
        ("study", f => Said<ExchangeFormatException>(() => StudyJson.Read(f, Tool))),
        ("proposals", f => Said<FormatException>(() => ProposedFilmJson.Read(f))),
        ("limits", f => Said<FormatException>(() => AdequacyLimits.Read(new MemoryStream(f)))),
        ("manifest", ModelFiles.Manifest),
        ("network", ModelFiles.Network),
        ("surface", f => Said<InvalidDataException>(() => StlReader.Read(f, "surface"))),
        ("event", f => Said<StoreException>(() => EventJson.Read(Encoding.UTF8.GetString(f)))),
        ("work-message", f => WorkMessage.Parse(f)),
        ("stored-result", f => PackedResult.Unpack(f)),
        ("result-line", f => ResultLine.Parse(f)),
        ("archive-answer", Bodies.ArchiveAnswer),
        ("archive-film", Bodies.ArchiveFilm),
        .. Routes.All.Select(r => (r.Name, new Action<byte[]>(f => Routes.Call(r.Method, r.Pattern, f)))),
        ("predictions", BenchFiles.Predictions),
        ("readers", BenchFiles.Readers),
        ("run-identity", BenchFiles.Identity),
        ("bench-answer", BenchFiles.Answer),
        ("golden", ModelFiles.Golden),
        ("bones", f => Said<InvalidDataException>(() => BoneFolder.Load(Path.GetDirectoryName(Scratch.Write("bones/bones.json", f))!))),
    ];

    /// <summary>Sends an input to the parser that its first byte picks.</summary>
    public static void Send(ReadOnlySpan<byte> input)
    {
        if (input.Length > 0)
        {
            All[input[0] % All.Count].Parse(input[1..].ToArray());
        }
    }

    /// <summary>Lets a parser turn an input away in its own words.</summary>
    public static void Said<TException>(Func<object?> parse)
        where TException : Exception
    {
        try
        {
            parse();
        }
        catch (TException)
        {
            // Turned away in a sentence: as it should.
        }
    }
}
