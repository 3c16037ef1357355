using ElbowAssist.Pipeline.Proposals;

namespace ElbowAssist.Cli.Films;

/// <summary>Names of outputs: the film's file name with its extension, and a suffix.</summary>
internal static class OutputNames
{
    public const string Reading = ".reading.json";
    public const string OverlaySvg = ".overlay.svg";
    public const string OverlayPng = ".overlay.png";
    public const string StructuredReport = ".sr.dcm";
    public const string PresentationState = ".gsps.dcm";

    public static IReadOnlyList<string> Suffixes { get; } = [Reading, OverlaySvg, OverlayPng, StructuredReport, PresentationState, ProposedFilm.FileSuffix];
}
