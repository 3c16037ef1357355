using static ElbowAssist.Anatomy.Landmarks.LandmarkNames;

namespace ElbowAssist.Anatomy.Measurements.Construction;

/// <summary>What constructions commonly need.</summary>
internal static class Needs
{
    /// <summary>
    /// Stretch in W that the levels of a shaft axis must span. On AP it is the limit set for the Baumann angle; the
    /// lateral axis, of which the last level lies 1.0 W above the fossa roof, is held to the same.
    /// </summary>
    public const double LeastSpan = 1.5;

    /// <summary>Heights in W above the fossa roof of the lateral levels 1 to 5.</summary>
    public static readonly double[] LateralLevels = [3.0, 2.5, 2.0, 1.5, 1.0];

    /// <summary>Heights in W above the fossa roof of the AP levels 1 to 4.</summary>
    public static readonly double[] ApLevels = [3.5, 2.75, 2.0, 1.25];

    /// <summary>Some posterior cortex of the humerus, to tell the sides.</summary>
    public static LandmarkNeed PosteriorCortex { get; } =
        LandmarkNeed.Some(ReasonCodes.HumeralLevelsMissing, HumerusPosterior, 1, 5, 1);

    /// <summary>Enough of the capitellar rim for a circle.</summary>
    public static LandmarkNeed Capitellum { get; } =
        LandmarkNeed.Some(ReasonCodes.CapitellumNotOutlined, CapitellumRim, 1, 12, 4);

    /// <summary>Enough of the medial trochlear lip for a circle.</summary>
    public static LandmarkNeed Trochlea { get; } =
        LandmarkNeed.Some(ReasonCodes.TrochleaNotOutlined, TrochleaLip, 1, 5, 3);

    /// <summary>Both cortices of the humerus on the lateral view; the span is checked apart.</summary>
    public static IReadOnlyList<LandmarkNeed> LateralShaft { get; } =
    [
        LandmarkNeed.Some(ReasonCodes.HumeralLevelsMissing, HumerusAnterior, 1, 5, 3),
        LandmarkNeed.Some(ReasonCodes.HumeralLevelsMissing, HumerusPosterior, 1, 5, 3),
    ];

    /// <summary>Both cortices of the humerus on the AP view; the span is checked apart.</summary>
    public static IReadOnlyList<LandmarkNeed> ApShaft { get; } =
    [
        LandmarkNeed.Some(ReasonCodes.HumeralLevelsMissing, HumerusLateral, 1, 4, 2),
        LandmarkNeed.Some(ReasonCodes.HumeralLevelsMissing, HumerusMedial, 1, 4, 2),
    ];

    /// <summary>Both cortices of the radial neck on the lateral view.</summary>
    public static IReadOnlyList<LandmarkNeed> LateralNeck { get; } = Both(RadiusAnterior, RadiusPosterior, 1);

    /// <summary>Both cortices of the radial shaft on the lateral view.</summary>
    public static IReadOnlyList<LandmarkNeed> LateralRadialShaft { get; } = Both(RadiusAnterior, RadiusPosterior, 3);

    /// <summary>Both cortices of the radial neck on the AP view.</summary>
    public static IReadOnlyList<LandmarkNeed> ApNeck { get; } = Both(RadiusLateral, RadiusMedial, 1);

    /// <summary>Both cortices of the radial shaft on the AP view.</summary>
    public static IReadOnlyList<LandmarkNeed> ApRadialShaft { get; } = Both(RadiusLateral, RadiusMedial, 3);

    /// <summary>Both edges of the capitellum on the AP view.</summary>
    public static LandmarkNeed CapitellarEdges { get; } =
        LandmarkNeed.All(ReasonCodes.CapitellumNotOutlined, CapitellumEdgeLateral, CapitellumEdgeMedial);

    private static IReadOnlyList<LandmarkNeed> Both(Func<int, string> a, Func<int, string> b, int from) =>
    [
        LandmarkNeed.Range(ReasonCodes.RadialLevelsMissing, a, from, from + 1),
        LandmarkNeed.Range(ReasonCodes.RadialLevelsMissing, b, from, from + 1),
    ];
}
