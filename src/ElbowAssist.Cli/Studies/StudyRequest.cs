using ElbowAssist.Exchange.Json.Facts;

namespace ElbowAssist.Cli.Studies;

/// <summary>What <c>study</c> was asked to do.</summary>
/// <param name="Films">Films of one patient, in any order.</param>
/// <param name="OutputFolder">Folder for the study and its report.</param>
/// <param name="Options">Facts given as options; they hold for every film.</param>
/// <param name="Model">Name of a model folder, or null for the default.</param>
/// <param name="LandmarkFile">File of placements, or null to let a model propose.</param>
/// <param name="StudyFile">File with the reader's marks, walk and settled sides, or null.</param>
internal sealed record StudyRequest(
    IReadOnlyList<string> Films,
    string OutputFolder,
    FilmFacts Options,
    string? Model,
    string? LandmarkFile,
    string? StudyFile);
