namespace ElbowAssist.Cli.Calibrating;

/// <summary>What <c>models calibrate</c> was asked to do.</summary>
/// <param name="Films">Folders of labelled films that calibrate.</param>
/// <param name="LimitFilms">Folders of labelled films that choose limits; empty to leave the limits as they are.</param>
/// <param name="Proposals">Folder of proposals; what is missing there is read and added.</param>
/// <param name="Model">Name of the model, or null for all landmark models.</param>
/// <param name="Origin">What the films are, in words.</param>
/// <param name="OutputFolder">Folder for manifests and limits.</param>
internal sealed record CalibrateRequest(
    IReadOnlyList<string> Films, IReadOnlyList<string> LimitFilms, string Proposals, string? Model, string Origin, string OutputFolder);
