namespace ElbowAssist.Cli.Benching;

/// <summary>What <c>bench --models</c> was asked to do.</summary>
/// <param name="Dataset">Folder or COCO file of labelled films.</param>
/// <param name="Models">Model folders, folders of them, or names of installed models.</param>
/// <param name="Predictions">COCO files of landmarks that other programs laid.</param>
/// <param name="Readers">COCO files or stores of landmarks that readers laid.</param>
/// <param name="StateView">Whether the models are told the view of each film.</param>
/// <param name="OutputFolder">Folder for answers and report.</param>
internal sealed record ContestRequest(
    string Dataset, IReadOnlyList<string> Models, IReadOnlyList<string> Predictions, IReadOnlyList<string> Readers, bool StateView, string OutputFolder);
