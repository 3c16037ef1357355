using ElbowAssist.Anatomy.Measurements.Construction;
using ElbowAssist.Geometry;

namespace ElbowAssist.Anatomy.Measurements.RadialNeckShaftAngle;

/// <summary>Radial neck axis against radial shaft axis on the AP view.</summary>
internal sealed class ApNeckShaftAngle : ApMeasurement
{
    /// <inheritdoc/>
    public override string Name => NeckShaftAngle.MeasurementName;

    /// <inheritdoc/>
    public override string Unit => "deg";

    /// <inheritdoc/>
    public override string Note => NeckShaftAngle.Construction + "+ when the head tilts laterally. " + NeckShaftAngle.Caution;

    /// <inheritdoc/>
    public override string Source => NeckShaftAngle.Source;

    /// <inheritdoc/>
    public override IReadOnlyList<LandmarkNeed> Needs { get; } = [.. Construction.Needs.ApNeck, .. Construction.Needs.ApRadialShaft];

    internal override int LineCount => 2;

    /// <inheritdoc/>
    public override string NoteBeside(double value) => ObtuseForm.Beside(value);

    internal override double Lay(in ApGeometry film, Span<Line> lines)
    {
        lines[0] = film.Neck;
        lines[1] = film.RadialShaft;
        return Sides.AngleToward(-film.RadialShaft.Direction, -film.Neck.Direction, film.RadialLateral);
    }
}
