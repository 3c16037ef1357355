using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Anatomy.Measurements.Construction;
using ElbowAssist.Anatomy.Rules;
using ElbowAssist.Geometry;

namespace ElbowAssist.Anatomy.Measurements.CarryingAngle;

/// <summary>Humeral shaft axis against ulnar axis on the AP view, valgus positive.</summary>
internal sealed class CarryingAngleMeasurement : ApMeasurement
{
    /// <inheritdoc/>
    public override string Name => "carrying-angle";

    /// <inheritdoc/>
    public override string Unit => "deg";

    /// <inheritdoc/>
    public override string Note =>
        "Humeral shaft axis against the axis of the proximal ulna, valgus +. Only in full extension and supination, said by the reader: " +
        "flexion falsifies it. 14.6 (4 to 28) degrees in 62 children of 2 to 11 years, 12.4 (SD 4.1) in 44 adult arms.";

    /// <inheritdoc/>
    public override string Source => Publication.Join([Publications.Hasegawa2017, Publications.Zampagni]);

    /// <inheritdoc/>
    public override IReadOnlyList<LandmarkNeed> Needs { get; } =
    [
        .. Construction.Needs.ApShaft,
        LandmarkNeed.Some(ReasonCodes.UlnarLevelsMissing, LandmarkNames.UlnaLateral, 1, 3, 2),
        LandmarkNeed.Some(ReasonCodes.UlnarLevelsMissing, LandmarkNames.UlnaMedial, 1, 3, 2),
    ];

    /// <inheritdoc/>
    public override IReadOnlyList<FilmCondition> Conditions =>
        [FilmCondition.TrueView, FilmCondition.FullExtensionAndSupination];

    internal override bool RestsOnShaftAxis => true;

    internal override int LineCount => 2;

    /// <inheritdoc/>
    public override string NoteBeside(double value) => ObtuseForm.Beside(value);

    internal override double Lay(in ApGeometry film, Span<Line> lines)
    {
        lines[0] = film.Shaft;
        lines[1] = film.Ulna;
        return Sides.AngleToward(film.Shaft.Direction, film.Ulna.Direction, film.Lateral);
    }
}
