using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Anatomy.Measurements.Construction;
using ElbowAssist.Anatomy.Rules;
using ElbowAssist.Geometry;

namespace ElbowAssist.Anatomy.Measurements.UlnohumeralGap;

/// <summary>Smallest distance from the trochlear notch to the arc of the medial trochlear lip, millimetres.</summary>
internal sealed class UlnohumeralGapMeasurement : LateralMeasurement
{
    /// <summary>Published limit after a reduction, reached counts.</summary>
    private static readonly double[] DropSign = [4];

    private static readonly int[] Notch = [.. Enumerable.Range(1, 4).Select(n => Index(LandmarkNames.UlnaNotch(n)))];

    /// <inheritdoc/>
    public override string Name => "ulnohumeral-gap";

    /// <inheritdoc/>
    public override string Unit => "mm";

    /// <inheritdoc/>
    public override string Note =>
        "Smallest distance from the trochlear notch of the ulna to the arc of the medial trochlear lip. Only in adults, after a " +
        "reduction, on a true lateral with known pixel spacing. Described from 4 mm (drop sign); it counts only if it persists.";

    /// <inheritdoc/>
    public override string Source => Publications.Coonrad.Citation;

    /// <inheritdoc/>
    public override IReadOnlyList<LandmarkNeed> Needs { get; } =
    [
        LandmarkNeed.Some(ReasonCodes.NotchNotVisible, LandmarkNames.UlnaNotch, 1, 4, 2),
        Construction.Needs.Trochlea,
    ];

    /// <inheritdoc/>
    public override IReadOnlyList<FilmCondition> Conditions =>
        [FilmCondition.Adult, FilmCondition.AfterReduction, FilmCondition.TrueView, FilmCondition.SpacingKnown];

    /// <inheritdoc/>
    public override IReadOnlyList<string> Circles => ["trochlea"];

    /// <inheritdoc/>
    public override double WidestInterval => 6;

    internal override int LineCount => 0;

    /// <inheritdoc/>
    public override IReadOnlyList<double> DecisionLimits(Patient patient) => DropSign;

    internal override double Lay(in LateralGeometry film, Span<Line> lines)
    {
        var nearest = double.NaN;
        foreach (var index in Notch)
        {
            var gap = film[index].DistanceTo(film.Trochlea.Centre) - film.Trochlea.Radius;
            nearest = double.IsNaN(nearest) || gap < nearest ? gap : nearest;
        }

        return nearest;
    }
}
