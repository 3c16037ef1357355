using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Anatomy.Measurements.Construction;
using ElbowAssist.Anatomy.Rules;
using ElbowAssist.Geometry;

namespace ElbowAssist.Anatomy.Measurements.LateralCapitellohumeralAngle;

/// <summary>Humeral shaft axis against the capitellar physis on the lateral view.</summary>
internal sealed class LateralCapitellohumeralAngleMeasurement : LateralMeasurement
{
    private static readonly int Anterior = Index(LandmarkNames.CapitellumPhysisAnterior);
    private static readonly int Posterior = Index(LandmarkNames.CapitellumPhysisPosterior);

    /// <inheritdoc/>
    public override string Name => "lateral-capitellohumeral-angle";

    /// <inheritdoc/>
    public override string Unit => "deg";

    /// <inheritdoc/>
    public override string Note =>
        "Humeral shaft axis against the capitellar physis, measured in front and above. A condyle that has lost its forward tilt " +
        "raises the angle. 50.8 (SD 6) degrees in 71 and 45 (22 to 70) degrees in 62 children; two readers agree poorly (0.37 to 0.56), " +
        "and published cuts contradict the geometry, so no limit is set here.";

    /// <inheritdoc/>
    public override string Source => Publication.Join([Publications.Shank, Publications.Hasegawa2018]);

    /// <inheritdoc/>
    public override IReadOnlyList<LandmarkNeed> Needs { get; } =
    [
        .. Construction.Needs.LateralShaft,
        LandmarkNeed.All(ReasonCodes.PhysisNotVisible, LandmarkNames.CapitellumPhysisAnterior, LandmarkNames.CapitellumPhysisPosterior),
    ];

    /// <inheritdoc/>
    public override IReadOnlyList<FilmCondition> Conditions => [FilmCondition.TrueView, FilmCondition.PhysisOpen];

    internal override bool RestsOnShaftAxis => true;

    internal override int LineCount => 2;

    internal override double Lay(in LateralGeometry film, Span<Line> lines)
    {
        lines[0] = film.Shaft;
        lines[1] = Line.Through(film[Posterior], film[Anterior]);
        return Angles.Between(-film.Shaft.Direction, lines[1].Direction);
    }
}
