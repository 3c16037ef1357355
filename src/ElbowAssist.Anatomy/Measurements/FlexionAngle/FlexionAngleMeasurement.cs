using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Anatomy.Measurements.Construction;
using ElbowAssist.Geometry;

namespace ElbowAssist.Anatomy.Measurements.FlexionAngle;

/// <summary>Flexion of the elbow: humeral shaft axis against the posterior border of the ulna, 0° straight.</summary>
internal sealed class FlexionAngleMeasurement : LateralMeasurement
{
    /// <summary>Stable name.</summary>
    public const string MeasurementName = "flexion-angle";

    /// <inheritdoc/>
    public override string Name => MeasurementName;

    /// <inheritdoc/>
    public override string Unit => "deg";

    /// <inheritdoc/>
    public override string Note =>
        "Humeral shaft axis against the posterior border of the ulna: 0 = straight, + in flexion. Fat pads are looked at only near 90 degrees.";

    /// <inheritdoc/>
    public override string Source => "construction of this project";

    /// <inheritdoc/>
    public override IReadOnlyList<LandmarkNeed> Needs { get; } =
    [
        .. Construction.Needs.LateralShaft,
        LandmarkNeed.Some(ReasonCodes.UlnarLevelsMissing, LandmarkNames.UlnaPosterior, 1, 3, 2),
    ];

    internal override bool RestsOnShaftAxis => true;

    internal override int LineCount => 2;

    internal override double Lay(in LateralGeometry film, Span<Line> lines)
    {
        lines[0] = film.Shaft;
        lines[1] = film.Ulna;
        return Sides.AngleToward(film.Shaft.Direction, film.Ulna.Direction, film.Anterior);
    }
}
