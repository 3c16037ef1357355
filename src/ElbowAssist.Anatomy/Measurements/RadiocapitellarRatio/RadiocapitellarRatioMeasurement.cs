using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Anatomy.Measurements.Construction;
using ElbowAssist.Anatomy.Rules;
using ElbowAssist.Geometry;

namespace ElbowAssist.Anatomy.Measurements.RadiocapitellarRatio;

/// <summary>
/// Distance of the perpendicular bisector of the radial head's articular surface from the capitellar centre over the
/// capitellar diameter; positive when the radial head lies anterior.
/// </summary>
internal sealed class RadiocapitellarRatioMeasurement : LateralMeasurement
{
    /// <summary>Published window, 40 healthy elbows of adolescents and adults.</summary>
    private static readonly double[] Window = [-0.05, 0.13];

    private static readonly int Anterior = Index(LandmarkNames.RadiusHeadAnterior);
    private static readonly int Posterior = Index(LandmarkNames.RadiusHeadPosterior);

    /// <inheritdoc/>
    public override string Name => "radiocapitellar-ratio";

    /// <inheritdoc/>
    public override string Unit => "1";

    /// <inheritdoc/>
    public override string Note =>
        "Distance of the perpendicular bisector of the radial head's articular surface from the capitellar centre over the capitellar " +
        "diameter, + when the radial head lies anterior. Published window -0.05 to +0.13 in 40 healthy adolescents and adults; two " +
        "readers agreed only moderately (0.52).";

    /// <inheritdoc/>
    public override string Source => Publications.Rouleau.Citation;

    /// <inheritdoc/>
    public override IReadOnlyList<LandmarkNeed> Needs { get; } =
    [
        LandmarkNeed.All(ReasonCodes.RadialHeadNotVisible, LandmarkNames.RadiusHeadAnterior, LandmarkNames.RadiusHeadPosterior),
        Construction.Needs.Capitellum,
    ];

    /// <inheritdoc/>
    public override IReadOnlyList<FilmCondition> Conditions => [FilmCondition.TrueView];

    /// <inheritdoc/>
    public override IReadOnlyList<string> Circles => ["capitellum"];

    internal override int LineCount => 1;

    /// <inheritdoc/>
    public override IReadOnlyList<double> DecisionLimits(Patient patient) =>
        patient?.AgeMonths >= MaturityOf.AdolescentFromMonths ? Window : [];

    internal override double Lay(in LateralGeometry film, Span<Line> lines)
    {
        var surface = (film[Anterior] - film[Posterior]).Unit;
        var middle = Point.Midpoint(film[Anterior], film[Posterior]);
        lines[0] = new Line(middle, surface.Perpendicular);
        return surface.Dot(middle - film.Capitellum.Centre) / (2 * film.Capitellum.Radius);
    }
}
