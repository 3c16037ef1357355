using ElbowAssist.Exchange;
using ElbowAssist.Exchange.Json;
using ElbowAssist.Exchange.Json.Coco;

namespace ElbowAssist.Bench.Datasets;

/// <summary>A labelled set of films: a folder of films with truth files, or COCO keypoints with the films they name.</summary>
/// <param name="Films">Films in the order of their names.</param>
/// <param name="Coco">The set as COCO gave it, or null.</param>
/// <param name="LabelFiles">Files that hold the labels.</param>
public sealed record FilmDataset(IReadOnlyList<LabelledFilm> Films, CocoSet? Coco, IReadOnlyList<string> LabelFiles)
{
    /// <summary>Name of the COCO file that a folder may hold.</summary>
    public const string CocoFile = "coco.json";

    private const string TruthSuffix = ".truth.json";

    /// <summary>Opens a set.</summary>
    /// <param name="path">A folder with <c>*.truth.json</c> or <c>coco.json</c>, or a COCO file; films lie beside them.</param>
    /// <param name="spacingOf">Row and column spacing in mm that a film's own file states, by its path; asked where COCO gives none.</param>
    /// <exception cref="ExchangeFormatException">There are no labels, or they cannot be used.</exception>
    /// <exception cref="IOException">A file cannot be read.</exception>
    public static FilmDataset Open(string path, Func<string, (double Row, double Column)?>? spacingOf = null)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        if (File.Exists(path))
        {
            return OfCoco(path, spacingOf);
        }

        var truths = Directory.EnumerateFiles(path, "*" + TruthSuffix).Order(StringComparer.Ordinal).ToList();
        var coco = Path.Combine(path, CocoFile);
        return truths.Count > 0 ? OfTruths(path, truths)
            : File.Exists(coco) ? OfCoco(coco, spacingOf)
            : throw new ExchangeFormatException($"{path} holds neither truth files nor {CocoFile}.");
    }

    private static FilmDataset OfTruths(string folder, IReadOnlyList<string> truths) => new(
        [.. truths.AsParallel().AsOrdered().Select(path => TruthJson.Read(File.ReadAllBytes(path))).Select(truth => new LabelledFilm
        {
            File = truth.Image.File,
            Path = Path.Combine(folder, truth.Image.File),
            Truth = truth,
            Patient = truth.Simulated is { } s ? FormattableString.Invariant($"{s.Seed}") : truth.Image.File,
            Injuries = truth.Simulated?.Injuries,
        })],
        null,
        truths);

    private static FilmDataset OfCoco(string file, Func<string, (double Row, double Column)?>? spacingOf)
    {
        var set = CocoSetReader.Read(File.ReadAllBytes(file));
        var folder = Path.GetDirectoryName(Path.GetFullPath(file))!;
        var films = set.Annotations.GroupBy(a => a.Image.Id).Select(laid => Film(folder, [.. laid], spacingOf)).OrderBy(f => f.File, StringComparer.Ordinal).ToList();
        return films.GroupBy(f => f.File, StringComparer.Ordinal).FirstOrDefault(g => g.Count() > 1) is { } twice
            ? throw new ExchangeFormatException($"Two images of {Path.GetFileName(file)} are named {twice.Key}.")
            : new FilmDataset(films, set, [file]);
    }

    private static LabelledFilm Film(string folder, IReadOnlyList<CocoAnnotation> laid, Func<string, (double Row, double Column)?>? spacingOf)
    {
        var image = laid[0].Image;
        if (laid.FirstOrDefault(a => a.View != laid[0].View) is not null)
        {
            throw new ExchangeFormatException($"{image.File} carries landmarks of two views.");
        }

        var path = Path.GetFullPath(Path.Combine(folder, image.File));
        if (!path.StartsWith(folder + Path.DirectorySeparatorChar, StringComparison.Ordinal))
        {
            throw new ExchangeFormatException($"{image.File} lies outside the folder of the set.");
        }

        if (image.RowSpacingMm is null && spacingOf?.Invoke(path) is var (row, column))
        {
            image = image with { RowSpacingMm = row, ColumnSpacingMm = column };
        }

        var placements = laid.Select(PlacementOf).ToList();
        if (placements.GroupBy(p => (p.Reader, p.WithProposals)).FirstOrDefault(g => g.Count() > 1) is { } twice)
        {
            throw new ExchangeFormatException($"{image.File} carries two placements of {(twice.Key.Reader.Length == 0 ? "one unnamed annotator" : twice.Key.Reader)}; name annotators apart.");
        }

        return new LabelledFilm
        {
            File = image.File,
            Path = path,
            Truth = ReferenceOf.Placements(image, laid[0].View, placements),
            Patient = image.Patient ?? image.File,
            Site = image.Site ?? "",
            Injuries = image.Injuries,
            Placements = placements,
        };
    }

    /// <summary>A placement as COCO gave it.</summary>
    public static Placement PlacementOf(CocoAnnotation laid) => new(
        laid.Annotator,
        laid.WithProposals,
        [.. laid.Landmarks.Where(l => l.Position is not null).Select(l => new TrueLandmark(l.Name, l.Kind, l.Position, null, l.Visibility))]);
}
