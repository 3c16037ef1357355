using ElbowAssist.Exchange.Json.Facts;

namespace ElbowAssist.Cli.Films;

/// <summary>What <c>read</c> was asked to do.</summary>
/// <param name="Paths">Files and folders as given.</param>
/// <param name="OutputFolder">Folder for the outputs.</param>
/// <param name="Options">Facts given as options; they hold for every film.</param>
/// <param name="Model">Name of a model folder, or null for the default.</param>
/// <param name="LandmarkFile">File of placements, or null to let a model propose.</param>
/// <param name="Dicom">Whether to write a structured report and a presentation state of each DICOM film.</param>
/// <param name="Output">What is written for each film.</param>
internal sealed record ReadRequest(
    IReadOnlyList<string> Paths,
    string OutputFolder,
    FilmFacts Options,
    string? Model,
    string? LandmarkFile,
    bool Dicom,
    ReadOutput Output = ReadOutput.All);

/// <summary>What <c>read</c> writes for each film.</summary>
internal enum ReadOutput
{
    /// <summary>The reading and its overlays.</summary>
    All,

    /// <summary>The reading alone.</summary>
    Reading,

    /// <summary>What the models propose before limits and calibration, for <c>models calibrate</c>.</summary>
    Proposals,
}
