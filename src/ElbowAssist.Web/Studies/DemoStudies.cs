using ElbowAssist.Exchange.Json.Facts;
using ElbowAssist.Store;

namespace ElbowAssist.Web.Studies;

/// <summary>A bundled demo study.</summary>
/// <param name="Name">Name to begin it by.</param>
/// <param name="Title">What it is.</param>
/// <param name="Films">Number of films.</param>
public sealed record DemoLine(string Name, string Title, int Films);

/// <summary>
/// The studies bundled with the program: folders with films of invented patients, their sidecars, a <c>title.txt</c> and,
/// where the landmarks were laid beforehand, COCO keypoints.
/// </summary>
internal sealed class DemoStudies(ServiceOptions options)
{
    private const string Placements = "landmarks.coco.json";
    private const string Title = "title.txt";

    public IReadOnlyList<DemoLine> List() =>
        [.. Folders().Select(f => new DemoLine(Path.GetFileName(f), TitleOf(f), Films(f).Count)).OrderBy(d => d.Title, StringComparer.Ordinal)];

    /// <summary>A new study with the films of a demo, or null if there is no such demo.</summary>
    public StoredStudy? Begin(string name, StudyStore store)
    {
        if (Folders().FirstOrDefault(f => Path.GetFileName(f) == name) is not { } folder)
        {
            return null;
        }

        var study = store.Create(TitleOf(folder), "demo");
        var placements = Path.Combine(folder, Placements) is var path && File.Exists(path) ? File.ReadAllText(path) : null;
        foreach (var film in Films(folder))
        {
            var sidecar = film + SidecarJson.Suffix;
            store.AddFilm(study.Id, Path.GetFileName(film), File.ReadAllBytes(film), File.Exists(sidecar) ? File.ReadAllText(sidecar) : null, placements);
        }

        return study;
    }

    private IEnumerable<string> Folders() =>
        options.DemoFolder is { } demos && Directory.Exists(demos) ? Directory.EnumerateDirectories(demos).Where(f => File.Exists(Path.Combine(f, Title))) : [];

    // The lateral first: it carries more.
    private static List<string> Films(string folder) =>
        [.. Directory.EnumerateFiles(folder).Where(f => Path.GetExtension(f) is ".png" or ".jpg").OrderByDescending(f => f.Contains("lateral", StringComparison.Ordinal)).ThenBy(f => f, StringComparer.Ordinal)];

    private static string TitleOf(string folder) => File.ReadAllText(Path.Combine(folder, Title)).Trim();
}
