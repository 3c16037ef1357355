using ElbowAssist.Anatomy.Measurements.Construction;
using ElbowAssist.Geometry;

namespace ElbowAssist.Anatomy.Measurements.RadiocapitellarLine;

/// <summary>Radiocapitellar line through the radial shaft, AP view.</summary>
internal sealed class ApShaftOffset : ApRadiocapitellarOffset
{
    /// <summary>Stable name.</summary>
    public const string MeasurementName = "radiocapitellar-line.ap.shaft.offset";

    /// <inheritdoc/>
    public override string Name => MeasurementName;

    /// <inheritdoc/>
    public override string OtherConstruction => ApNeckOffset.MeasurementName;

    /// <inheritdoc/>
    public override string Note =>
        "Axis of the radial shaft through two midpoints; distance from the middle of the capitellum over its extent square to the axis, " +
        "+ toward lateral. The usual crossing lies about 30 % of the capitellum from its lateral edge. The AP view alone counts little.";

    /// <inheritdoc/>
    public override IReadOnlyList<LandmarkNeed> Needs { get; } = [.. Construction.Needs.ApRadialShaft, Construction.Needs.CapitellarEdges];

    private protected override Line Axis(in ApGeometry film) => film.RadialShaft;
}
