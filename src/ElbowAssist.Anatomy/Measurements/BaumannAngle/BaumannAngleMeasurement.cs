using System.Globalization;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Anatomy.Measurements.Construction;
using ElbowAssist.Anatomy.Rules;
using ElbowAssist.Geometry;

namespace ElbowAssist.Anatomy.Measurements.BaumannAngle;

/// <summary>
/// Humeral shaft axis against the lateral condylar physis on the AP view, on the lateral side (convention A). Convention B,
/// against the perpendicular to the shaft, is 90° less A.
/// </summary>
internal sealed class BaumannAngleMeasurement : ApMeasurement
{
    private static readonly int Lateral = Index(LandmarkNames.CapitellumPhysisLateral);
    private static readonly int Medial = Index(LandmarkNames.CapitellumPhysisMedial);

    /// <inheritdoc/>
    public override string Name => "baumann-angle";

    /// <inheritdoc/>
    public override string Unit => "deg";

    /// <inheritdoc/>
    public override string Note =>
        "Convention A: humeral shaft axis against the lateral condylar physis, on the lateral side; larger means more varus. " +
        "71.5 (SD 6.2) degrees in 71 children, 71 (56 to 86) in 62. Compare sides rather than hold one side against a range.";

    /// <inheritdoc/>
    public override string Source => Publication.Join([Publications.Shank, Publications.Hasegawa2018]);

    /// <inheritdoc/>
    public override IReadOnlyList<LandmarkNeed> Needs { get; } =
    [
        .. Construction.Needs.ApShaft,
        LandmarkNeed.All(ReasonCodes.PhysisNotVisible, LandmarkNames.CapitellumPhysisLateral, LandmarkNames.CapitellumPhysisMedial),
    ];

    /// <inheritdoc/>
    public override IReadOnlyList<FilmCondition> Conditions =>
        [FilmCondition.TrueView, FilmCondition.HumerusFlatToDetector, FilmCondition.PhysisOpen];

    internal override bool RestsOnShaftAxis => true;

    internal override int LineCount => 2;

    /// <inheritdoc/>
    public override string NoteBeside(double value) =>
        string.Create(CultureInfo.InvariantCulture, $"Convention B: {ConventionB(value):0.0} degrees.");

    internal override double Lay(in ApGeometry film, Span<Line> lines)
    {
        lines[0] = film.Shaft;
        lines[1] = Line.Through(film[Medial], film[Lateral]);
        return Angles.Between(-film.Shaft.Direction, lines[1].Direction);
    }

    /// <summary>The same angle in convention B.</summary>
    internal static double ConventionB(double conventionA) => 90 - conventionA;
}
