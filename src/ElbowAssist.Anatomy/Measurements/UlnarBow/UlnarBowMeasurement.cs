using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Anatomy.Measurements.Construction;
using ElbowAssist.Geometry;

namespace ElbowAssist.Anatomy.Measurements.UlnarBow;

/// <summary>
/// Largest distance of the posterior ulnar border from the straight line between the olecranon and the distal border,
/// millimetres. Needs the wrist end of the ulna, which an elbow film does not show.
/// </summary>
internal sealed class UlnarBowMeasurement : LateralMeasurement
{
    private static readonly int Olecranon = Index(LandmarkNames.UlnaOlecranon);
    private static readonly int[] Between = [Index(LandmarkNames.UlnaPosterior(1)), Index(LandmarkNames.UlnaPosterior(2))];
    private static readonly int Distal = Index(LandmarkNames.UlnaPosterior(3));

    /// <inheritdoc/>
    public override string Name => "ulnar-bow";

    /// <inheritdoc/>
    public override string Unit => "mm";

    /// <inheritdoc/>
    public override string Note =>
        "Largest distance of the posterior ulnar border from the straight line between olecranon and distal border. Needs a forearm " +
        "film: there the reader places the olecranon and the posterior border by hand, its last point at the distal end.";

    /// <inheritdoc/>
    public override string Source => "Lincoln TL, Mubarak SJ. J Pediatr Orthop 1994 (PubMed 8077426)";

    /// <inheritdoc/>
    public override IReadOnlyList<LandmarkNeed> Needs { get; } =
    [
        LandmarkNeed.All(ReasonCodes.UlnarLevelsMissing, LandmarkNames.UlnaOlecranon),
        LandmarkNeed.Range(ReasonCodes.UlnarLevelsMissing, LandmarkNames.UlnaPosterior, 1, 3),
    ];

    /// <inheritdoc/>
    public override IReadOnlyList<FilmCondition> Conditions => [FilmCondition.ForearmFilmByHand, FilmCondition.SpacingKnown];

    /// <inheritdoc/>
    public override double WidestInterval => 10;

    internal override int LineCount => 1;

    internal override double Lay(in LateralGeometry film, Span<Line> lines)
    {
        var chord = Line.Through(film[Olecranon], film[Distal]);
        lines[0] = chord;
        return Math.Max(
            Math.Abs(chord.SignedDistanceTo(film[Between[0]])), Math.Abs(chord.SignedDistanceTo(film[Between[1]])));
    }
}
