using ElbowAssist.Exchange.Json.Facts;

namespace ElbowAssist.Cli.Films;

/// <summary>The films that files and folders stand for.</summary>
internal static class FilmList
{
    // A DICOM file often has no extension at all.
    private static readonly string[] FilmExtensions = [".png", ".jpg", ".jpeg", ".tif", ".tiff", ".dcm", ".dicom", ""];

    private static readonly string[] OwnSuffixes =
        [.. OutputNames.Suffixes, SidecarJson.Suffix, ".truth.json"];

    /// <summary>Full paths in the order given, those of a folder in the order of their names.</summary>
    /// <exception cref="UserErrorException">Two films of one name, or a folder without films.</exception>
    public static IReadOnlyList<string> Of(IReadOnlyList<string> paths)
    {
        var films = paths.SelectMany(Expand).Distinct(StringComparer.Ordinal).ToList();
        var twice = films.GroupBy(Path.GetFileName, StringComparer.Ordinal).FirstOrDefault(g => g.Count() > 1);
        return twice is null
            ? films
            : throw new UserErrorException($"Two films are named {twice.Key} and their outputs would overwrite each other; read them into separate folders.");
    }

    private static IEnumerable<string> Expand(string path)
    {
        var full = Path.GetFullPath(path);
        if (!Directory.Exists(full))
        {
            return [full];
        }

        var films = FilmsOf(full);
        return films.Count > 0 ? films : throw new UserErrorException($"The folder {path} holds no films.");
    }

    /// <summary>The films in a folder in the order of their names.</summary>
    public static IReadOnlyList<string> FilmsOf(string folder) =>
        [.. Directory.EnumerateFiles(folder).Where(IsFilm).Order(StringComparer.Ordinal)];

    /// <summary>Whether a file in a folder is to be read: by its extension, and none of our own outputs.</summary>
    public static bool IsFilm(string path)
    {
        var name = Path.GetFileName(path);
        return !name.StartsWith('.') &&
            FilmExtensions.Contains(Path.GetExtension(name), StringComparer.OrdinalIgnoreCase) &&
            !OwnSuffixes.Any(s => name.EndsWith(s, StringComparison.OrdinalIgnoreCase));
    }
}
