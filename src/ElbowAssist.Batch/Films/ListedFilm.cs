using ElbowAssist.Exchange.Dicom.Web;

namespace ElbowAssist.Batch.Films;

/// <summary>A film of a batch before it is opened.</summary>
/// <param name="Name">
/// What its result calls it: its path below the source, parts joined by <c>/</c>, or its SOP instance UID. Different for
/// every film of a source.
/// </param>
/// <param name="Reference">Where an archive keeps it; null for a file.</param>
public sealed record ListedFilm(string Name, FilmReference? Reference = null);

/// <summary>An opened film: everything its reading depends on but the options of the run.</summary>
/// <param name="FileName">File name without a folder; readings name it.</param>
/// <param name="Content">The whole file.</param>
/// <param name="Sidecar">The sidecar beside it as it stands, or null.</param>
public sealed record FilmBytes(string FileName, ReadOnlyMemory<byte> Content, ReadOnlyMemory<byte>? Sidecar);
