using ElbowAssist.Exchange.Dicom.Films;
using ElbowAssist.Exchange.Json.Facts;
using ElbowAssist.Imaging;
using ElbowAssist.Reading;
using ElbowAssist.Reading.Assembly;
using ElbowAssist.Reading.Limits;

namespace ElbowAssist.Web.Films;

/// <summary>A decoded film with what is known of it.</summary>
/// <param name="Radiograph">Pixels, with the spacing that was settled on.</param>
/// <param name="Facts">What is known beyond the pixels.</param>
/// <param name="Dicom">The object it came from, or null.</param>
public sealed record OpenedFilm(Radiograph Radiograph, ResolvedFacts Facts, DicomSource? Dicom);

/// <summary>Opens films and lets the models propose on them: the service's door to the rest of the program. Thread-safe.</summary>
public interface IFilmDesk
{
    /// <summary>The program, named in every reading.</summary>
    ToolIdentity Tool { get; }

    /// <summary>The limits that every reading of the service goes by.</summary>
    AdequacyLimits Limits => AdequacyLimits.Default;

    /// <summary>Decodes a film.</summary>
    /// <param name="file">The whole file.</param>
    /// <param name="name">File name without a folder.</param>
    /// <param name="stated">What is said of it, in order of precedence.</param>
    /// <exception cref="Imaging.Files.UnreadableFilmException">The film cannot be decoded; the message is one sentence.</exception>
    /// <exception cref="Exchange.ExchangeFormatException">What is said does not fit the film.</exception>
    OpenedFilm Open(ReadOnlyMemory<byte> file, string name, IReadOnlyList<FilmFacts> stated);

    /// <summary>What a reading is assembled from, the models' proposals included.</summary>
    /// <param name="film">The film.</param>
    /// <param name="placements">Landmarks laid beforehand, which take the place of a model's proposals; or null.</param>
    /// <param name="cancellation">Looked at between passes.</param>
    /// <exception cref="OperationCanceledException">Cancelled.</exception>
    ReadingInput Propose(OpenedFilm film, ReadOnlyMemory<byte>? placements, CancellationToken cancellation);
}
