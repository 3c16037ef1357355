using ElbowAssist.Bench.Datasets;
using ElbowAssist.Exchange;
using ElbowAssist.Exchange.Json.Coco;

namespace ElbowAssist.Cli.Benching;

/// <summary>Placements of a reader study, added to the films of a data set; the reference of the set stays what it was.</summary>
internal static class ReaderPlacements
{
    /// <summary>Adds the placements of a COCO file or of a store of studies.</summary>
    /// <exception cref="ExchangeFormatException">The file cannot be used, or names a film that the set does not hold.</exception>
    public static FilmDataset Add(FilmDataset dataset, string path) =>
        StoredPlacements.IsStore(path) ? With(dataset, StoredPlacements.Of(path, dataset)) : With(dataset, Coco(dataset, path));

    private static ILookup<string, Placement> Coco(FilmDataset dataset, string path)
    {
        var laid = CocoSetReader.ReadPlacements(File.ReadAllBytes(path), dataset.Coco);
        var films = dataset.Films.Select(f => f.File).ToHashSet(StringComparer.Ordinal);
        return laid.FirstOrDefault(l => !films.Contains(l.Image.File)) is { } stranger
            ? throw new ExchangeFormatException($"{Path.GetFileName(path)} is about {stranger.Image.File}, which the data set does not hold.")
            : laid.ToLookup(a => a.Image.File, FilmDataset.PlacementOf, StringComparer.Ordinal);
    }

    private static FilmDataset With(FilmDataset dataset, ILookup<string, Placement> laid) =>
        dataset with { Films = [.. dataset.Films.Select(f => f with { Placements = Distinct(f.File, [.. f.Placements, .. laid[f.File]]) })] };

    private static IReadOnlyList<Placement> Distinct(string file, IReadOnlyList<Placement> placements) =>
        placements.GroupBy(p => (p.Reader, p.WithProposals)).FirstOrDefault(g => g.Count() > 1) is { } twice
            ? throw new ExchangeFormatException($"{file} carries two placements of {(twice.Key.Reader.Length == 0 ? "one unnamed reader" : twice.Key.Reader)}; name readers apart.")
            : placements;
}
