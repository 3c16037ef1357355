using System.Diagnostics;
using ElbowAssist.Anatomy;
using ElbowAssist.Exchange;
using ElbowAssist.Exchange.Dicom.Films;
using ElbowAssist.Exchange.Json.Facts;
using ElbowAssist.Imaging;
using ElbowAssist.Imaging.Files;
using ElbowAssist.Reading;
using ElbowAssist.Reading.Assembly;

namespace ElbowAssist.Cli.Films;

/// <summary>A decoded film and what options and files say of it.</summary>
/// <param name="Radiograph">Pixels, with the spacing that was settled on.</param>
/// <param name="Facts">Facts after all sources were heard.</param>
/// <param name="Dicom">The DICOM film it came from, or null.</param>
/// <param name="Decoding">Time the decoding took.</param>
internal sealed record LoadedFilm(Radiograph Radiograph, ResolvedFacts Facts, DicomFilm? Dicom, TimeSpan Decoding)
{
    /// <summary>What the reader has said of how the film was taken.</summary>
    public ReaderStatements Statements { get; init; } = new();

    /// <summary>Decodes a film and hears its sidecar and header. Whoever disposes of its radiograph lets the next film have the memory.</summary>
    /// <exception cref="UnreadableFilmException">The film cannot be decoded.</exception>
    /// <exception cref="ExchangeFormatException">The sidecar is wrong.</exception>
    public static LoadedFilm Load(string path, FilmFacts options)
    {
        var started = Stopwatch.GetTimestamp();
        var dicom = DicomFiles.ReadIfDicom(path);
        var radiograph = dicom?.Radiograph ?? FilmFile.Read(path, reuse: true);
        var decoding = Stopwatch.GetElapsedTime(started);
        return Of(Path.GetFileName(path), radiograph, dicom?.Film, decoding, [options, .. Sidecar(path)]);
    }

    /// <summary>Decodes a film handed over as bytes and hears what is said of it besides, in order of precedence.</summary>
    /// <exception cref="UnreadableFilmException">The film cannot be decoded.</exception>
    /// <exception cref="ExchangeFormatException">What is said does not fit the film.</exception>
    public static LoadedFilm Decode(ReadOnlyMemory<byte> file, string name, IReadOnlyList<FilmFacts> stated)
    {
        var started = Stopwatch.GetTimestamp();
        var dicom = DicomFiles.DecodeIfDicom(file, name);
        var radiograph = dicom?.Radiograph ?? FilmFile.Decode(file, name);
        return Of(name, radiograph, dicom?.Film, Stopwatch.GetElapsedTime(started), stated);
    }

    private static LoadedFilm Of(string name, Radiograph radiograph, DicomFilm? dicom, TimeSpan decoding, IReadOnlyList<FilmFacts> stated)
    {
        var facts = ResolvedFacts.From([.. stated, .. dicom is { } header ? [DicomFiles.Facts(header)] : Array.Empty<FilmFacts>()]);
        if (dicom is { } film)
        {
            DicomFiles.ExpectUsableSpacing(name, film, facts);
            facts = WithHeader(facts, film);
        }

        return new LoadedFilm(
            radiograph.With(radiograph.Facts with
            {
                RowSpacingMm = facts.RowSpacingMm,
                ColumnSpacingMm = facts.ColumnSpacingMm,
                SpacingSource = facts.SpacingSource,
            }),
            facts,
            dicom,
            decoding);
    }

    /// <summary>Where the header contradicts itself, unless another source has settled it; and why a spacing it gives was not taken.</summary>
    private static ResolvedFacts WithHeader(ResolvedFacts facts, DicomFilm film) => facts with
    {
        SpacingSource = facts.RowSpacingMm is null ? film.Spacing.Source : facts.SpacingSource,
        Conflicts =
        [
            .. facts.Conflicts,
            .. film.Conflicts.Where(c => facts.Conflicts.All(f => f.Code != c.Code) && (c.Code != "side-contradicted" || facts.Side == Side.Unknown)),
        ],
    };

    /// <summary>The view the header states where the reading found another, as a sentence; else null.</summary>
    public Reason? ViewConflict(FilmReading reading) =>
        Dicom is { ViewHint: not View.Unknown } film && reading.View.Name != View.Unknown && reading.View.Name != film.ViewHint
            ? new Reason("view-contradicted", "The DICOM header states another view than the one that was read.")
            : null;

    private static IEnumerable<FilmFacts> Sidecar(string path)
    {
        var sidecar = path + SidecarJson.Suffix;
        if (!File.Exists(sidecar))
        {
            yield break;
        }

        FilmFacts facts;
        try
        {
            facts = SidecarJson.Read(File.ReadAllBytes(sidecar));
        }
        catch (Exception e) when (e is ExchangeFormatException or IOException or UnauthorizedAccessException)
        {
            throw new ExchangeFormatException($"The sidecar {Path.GetFileName(sidecar)} cannot be used: {e.Message}", e);
        }

        yield return facts;
    }
}
