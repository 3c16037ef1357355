using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Anatomy.Measurements.Construction;
using ElbowAssist.Anatomy.Rules;
using ElbowAssist.Geometry;

namespace ElbowAssist.Anatomy.Measurements.FatPadAngle;

/// <summary>Line from the base to the tip of the anterior fat pad against the humeral shaft axis.</summary>
internal sealed class AnteriorFatPadAngle : LateralMeasurement
{
    /// <summary>Published cut-off in children.</summary>
    private static readonly double[] CutOff = [16];

    private static readonly int Base = Index(LandmarkNames.FatPadAnteriorBase);
    private static readonly int Tip = Index(LandmarkNames.FatPadAnteriorTip);

    /// <inheritdoc/>
    public override string Name => "fat-pad.anterior.angle";

    /// <inheritdoc/>
    public override string Unit => "deg";

    /// <inheritdoc/>
    public override string Note =>
        "Line from the proximal attachment to the tip of the anterior fat pad against the humeral shaft axis, + away from the bone. " +
        "Published cut-off 16 degrees, children only. A small angle is no ground to close the search.";

    /// <inheritdoc/>
    public override string Source => Publications.Poppelaars.Citation;

    /// <inheritdoc/>
    public override IReadOnlyList<LandmarkNeed> Needs { get; } =
    [
        .. Construction.Needs.LateralShaft,
        LandmarkNeed.All(ReasonCodes.FatPadNotFollowed, LandmarkNames.FatPadAnteriorBase, LandmarkNames.FatPadAnteriorTip),
    ];

    /// <inheritdoc/>
    public override IReadOnlyList<FilmCondition> Conditions =>
        [FilmCondition.TrueView, FilmCondition.FlexedNearRightAngle, FilmCondition.SoftTissueUncovered];

    internal override bool RestsOnShaftAxis => true;

    internal override int LineCount => 2;

    /// <inheritdoc/>
    public override IReadOnlyList<double> DecisionLimits(Patient patient) =>
        patient?.AgeMonths < MaturityOf.AdultFromMonths ? CutOff : [];

    internal override double Lay(in LateralGeometry film, Span<Line> lines)
    {
        lines[0] = film.Shaft;
        lines[1] = Line.Through(film[Base], film[Tip]);
        return Sides.AngleToward(film.Shaft.Direction, lines[1].Direction, film.Anterior);
    }
}
