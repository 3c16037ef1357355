using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Anatomy.Measurements.Construction;
using ElbowAssist.Anatomy.Rules;
using ElbowAssist.Geometry;

namespace ElbowAssist.Anatomy.Measurements.ShaftCondylarAngle;

/// <summary>Humeral shaft axis against the axis from the waist of the hourglass through the capitellar centre, acute form.</summary>
internal sealed class ShaftCondylarAngleMeasurement : LateralMeasurement
{
    private static readonly int Waist = Index(LandmarkNames.HumerusWaist);

    /// <inheritdoc/>
    public override string Name => "shaft-condylar-angle";

    /// <inheritdoc/>
    public override string Unit => "deg";

    /// <inheritdoc/>
    public override string Note =>
        "Humeral shaft axis against the axis from the waist of the hourglass through the capitellar centre, acute form, + when the " +
        "condyle leans forward. 41.6 (30 to 70) degrees in 142 children. As a test at 40 degrees in 53 children: accuracy 92 %, " +
        "sensitivity 76 %, specificity 93 %; such a cut would flag much of a healthy population, so no limit is set here.";

    /// <inheritdoc/>
    public override string Source => Publication.Join([Publications.Simanovsky, Publications.ShaftCondylar2019]);

    /// <inheritdoc/>
    public override IReadOnlyList<LandmarkNeed> Needs { get; } =
    [
        .. Construction.Needs.LateralShaft,
        LandmarkNeed.All(ReasonCodes.WaistNotVisible, LandmarkNames.HumerusWaist),
        Construction.Needs.Capitellum,
    ];

    /// <inheritdoc/>
    public override IReadOnlyList<FilmCondition> Conditions => [FilmCondition.TrueView];

    /// <inheritdoc/>
    public override IReadOnlyList<string> Circles => ["capitellum"];

    internal override bool RestsOnShaftAxis => true;

    internal override int LineCount => 2;

    /// <inheritdoc/>
    public override string NoteBeside(double value) => ObtuseForm.Beside(value);

    internal override double Lay(in LateralGeometry film, Span<Line> lines)
    {
        lines[0] = film.Shaft;
        lines[1] = Line.Through(film[Waist], film.Capitellum.Centre);
        return Sides.AngleToward(film.Shaft.Direction, lines[1].Direction, film.Anterior);
    }
}
