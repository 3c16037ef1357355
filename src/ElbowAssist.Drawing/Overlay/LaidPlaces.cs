using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Geometry;

namespace ElbowAssist.Drawing.Overlay;

/// <summary>The landmarks of a reading that have a place, by name.</summary>
internal sealed class LaidPlaces(IReadOnlyList<Landmark> landmarks)
{
    private readonly Dictionary<string, Landmark> laid = landmarks
        .Where(l => l.Position is not null)
        .ToDictionary(l => l.Name, StringComparer.Ordinal);

    public bool Any => laid.Count > 0;

    public IEnumerable<Point> All => laid.Values.Select(l => l.Position!.Value);

    public Point? this[string name] => laid.TryGetValue(name, out var landmark) ? landmark.Position : null;

    /// <summary>The laid members of a numbered family, in order.</summary>
    public IReadOnlyList<Point> Family(Func<int, string> name, int count) =>
        [.. Enumerable.Range(1, count).Select(n => this[name(n)]).OfType<Point>()];

    /// <summary>True if a direction square to the humerus points from its anterior to its posterior cortex.</summary>
    public bool TowardPosterior(Vector direction) =>
        this[LandmarkNames.HumerusAnterior(5)] is { } anterior &&
        this[LandmarkNames.HumerusPosterior(5)] is { } posterior &&
        direction.Dot(posterior - anterior) > 0;

    /// <summary>The places of the landmarks with one of the prefixes; all places where there are none or no prefix is given.</summary>
    public IReadOnlyList<Point> Of(IReadOnlyList<string> prefixes)
    {
        var found = With(prefixes).Select(l => l.Position!.Value).ToList();
        return found.Count > 0 ? found : [.. All];
    }

    /// <summary>True if every laid landmark with one of the prefixes was laid by the reader.</summary>
    public bool ByReader(IReadOnlyList<string> prefixes)
    {
        var concerned = With(prefixes).ToList();
        return concerned.Count > 0 && concerned.All(l => l.Source == LandmarkSource.Reader);
    }

    private IEnumerable<Landmark> With(IReadOnlyList<string> prefixes) =>
        laid.Values.Where(l => prefixes.Count == 0 || prefixes.Any(p => l.Name.StartsWith(p, StringComparison.Ordinal)));
}
