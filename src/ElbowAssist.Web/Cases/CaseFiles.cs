namespace ElbowAssist.Web.Cases;

/// <summary>A teacher's read as a file: films and lines, and nobody's name.</summary>
/// <param name="Schema"><c>elbowassist/case/1</c>.</param>
/// <param name="Title">Title for the list.</param>
/// <param name="Films">Films.</param>
/// <param name="Lines">The teacher's lines.</param>
public sealed record CaseFile(string Schema, string Title, IReadOnlyList<CaseFilm> Films, IReadOnlyList<CaseLine> Lines)
{
    /// <summary>Schema identifier.</summary>
    public const string SchemaId = "elbowassist/case/1";
}

/// <summary>A film of a case.</summary>
/// <param name="Name">File name.</param>
/// <param name="Content">The file, base64.</param>
/// <param name="Stated">What is said of it, as a sidecar; or null.</param>
public sealed record CaseFilm(string Name, byte[] Content, string? Stated);

/// <summary>A line on a film.</summary>
/// <param name="Sha256">SHA-256 of the film's file, lower-case hex.</param>
/// <param name="Name">Name of the line.</param>
/// <param name="From">x and y of one point, pixels of the original image.</param>
/// <param name="To">x and y of another.</param>
public sealed record CaseLine(string Sha256, string Name, double[] From, double[] To);

/// <summary>A learner's lines as a file, without a name.</summary>
/// <param name="Schema"><c>elbowassist/lines/1</c>.</param>
/// <param name="Lines">Lines.</param>
public sealed record LinesFile(string Schema, IReadOnlyList<CaseLine> Lines)
{
    /// <summary>Schema identifier.</summary>
    public const string SchemaId = "elbowassist/lines/1";
}
