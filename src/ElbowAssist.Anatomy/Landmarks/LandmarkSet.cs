using System.Collections.Frozen;
using static ElbowAssist.Anatomy.Landmarks.LandmarkNames;

namespace ElbowAssist.Anatomy.Landmarks;

/// <summary>
/// The landmarks of a view, in a fixed order. W is the smallest outer anteroposterior width of the humeral shaft in
/// its distal half; levels are fractions of anatomy, never of what the film shows.
/// </summary>
public sealed class LandmarkSet
{
    private readonly FrozenDictionary<string, int> indices;

    private LandmarkSet(View view, IReadOnlyList<LandmarkDefinition> landmarks)
    {
        View = view;
        Landmarks = landmarks;
        indices = landmarks.Select((l, i) => KeyValuePair.Create(l.Name, i)).ToFrozenDictionary(StringComparer.Ordinal);
    }

    /// <summary>The landmarks of the lateral view.</summary>
    public static LandmarkSet Lateral { get; } = new(View.Lateral,
    [
        .. Contour(HumerusAnterior, 5),
        .. Contour(HumerusPosterior, 5),
        Point(HumerusFossaRoof),
        Point(HumerusWaist),
        .. Contour(CapitellumRim, 12),
        Point(CapitellumPhysisAnterior),
        Point(CapitellumPhysisPosterior),
        .. Contour(TrochleaLip, 5),
        .. Contour(RadiusAnterior, 4),
        .. Contour(RadiusPosterior, 4),
        Point(RadiusHeadAnterior),
        Point(RadiusHeadPosterior),
        Point(UlnaCoronoid),
        Point(UlnaOlecranon),
        .. Contour(UlnaNotch, 4),
        .. Contour(UlnaPosterior, 3),
        Point(FatPadAnteriorTip),
        Point(FatPadAnteriorBase),
        Point(FatPadPosteriorTip),
    ]);

    /// <summary>The landmarks of the AP view.</summary>
    public static LandmarkSet Ap { get; } = new(View.Ap,
    [
        .. Contour(HumerusLateral, 4),
        .. Contour(HumerusMedial, 4),
        Point(HumerusEpicondyleLateral),
        Point(HumerusEpicondyleMedial),
        Point(HumerusFossaRoof),
        Contour(CapitellumEdgeLateral),
        Contour(CapitellumEdgeMedial),
        Contour(CapitellumDistal),
        Point(CapitellumPhysisLateral),
        Point(CapitellumPhysisMedial),
        Contour(TrochleaEdgeMedial),
        .. Contour(RadiusLateral, 4),
        .. Contour(RadiusMedial, 4),
        Point(RadiusHeadLateral),
        Point(RadiusHeadMedial),
        .. Contour(UlnaLateral, 3),
        .. Contour(UlnaMedial, 3),
    ]);

    /// <summary>The view these landmarks belong to.</summary>
    public View View { get; }

    /// <summary>Definitions in the fixed order.</summary>
    public IReadOnlyList<LandmarkDefinition> Landmarks { get; }

    /// <summary>The set of a view, or null for a view without landmarks.</summary>
    public static LandmarkSet? Of(View view) => view switch
    {
        View.Lateral => Lateral,
        View.Ap => Ap,
        _ => null,
    };

    /// <summary>Index of a name in the fixed order, or −1.</summary>
    public int IndexOf(string name) => indices.TryGetValue(name, out var index) ? index : -1;

    private static LandmarkDefinition Point(string name) => new(name, LandmarkKind.Point);

    private static LandmarkDefinition Contour(string name) => new(name, LandmarkKind.Contour);

    private static IEnumerable<LandmarkDefinition> Contour(Func<int, string> name, int count) =>
        Enumerable.Range(1, count).Select(n => Contour(name(n)));
}
