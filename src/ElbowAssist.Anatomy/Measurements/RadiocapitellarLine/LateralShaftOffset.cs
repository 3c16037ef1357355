using ElbowAssist.Anatomy.Measurements.Construction;
using ElbowAssist.Geometry;

namespace ElbowAssist.Anatomy.Measurements.RadiocapitellarLine;

/// <summary>Radiocapitellar line through the radial shaft, lateral view.</summary>
internal sealed class LateralShaftOffset : LateralRadiocapitellarOffset
{
    /// <summary>Stable name.</summary>
    public const string MeasurementName = "radiocapitellar-line.lateral.shaft.offset";

    /// <inheritdoc/>
    public override string Name => MeasurementName;

    /// <inheritdoc/>
    public override string OtherConstruction => LateralNeckOffset.MeasurementName;

    /// <inheritdoc/>
    public override string Note =>
        "Axis of the radial shaft through two midpoints; distance from the middle of the capitellum over its extent square to the axis, " +
        "+ toward the flexor side. The axis crosses the capitellum between -0.5 and 0.5. In healthy children this axis missed the " +
        "capitellum in 12.7 % of lines, the neck axis in 1.2 %.";

    /// <inheritdoc/>
    public override IReadOnlyList<LandmarkNeed> Needs { get; } = [.. Construction.Needs.LateralRadialShaft, Construction.Needs.Capitellum];

    private protected override Line Axis(in LateralGeometry film) => film.RadialShaft;
}
