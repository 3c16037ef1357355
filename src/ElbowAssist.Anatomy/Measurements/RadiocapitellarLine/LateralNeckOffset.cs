using ElbowAssist.Anatomy.Measurements.Construction;
using ElbowAssist.Geometry;

namespace ElbowAssist.Anatomy.Measurements.RadiocapitellarLine;

/// <summary>Radiocapitellar line through the radial neck, lateral view.</summary>
internal sealed class LateralNeckOffset : LateralRadiocapitellarOffset
{
    /// <summary>Stable name.</summary>
    public const string MeasurementName = "radiocapitellar-line.lateral.neck.offset";

    /// <inheritdoc/>
    public override string Name => MeasurementName;

    /// <inheritdoc/>
    public override string OtherConstruction => LateralShaftOffset.MeasurementName;

    /// <inheritdoc/>
    public override string Note =>
        "Axis of the radial neck through two midpoints; distance from the middle of the capitellum over its extent square to the axis, " +
        "+ toward the flexor side. The axis crosses the capitellum between -0.5 and 0.5. In children only the ossified part is seen.";

    /// <inheritdoc/>
    public override IReadOnlyList<LandmarkNeed> Needs { get; } = [.. Construction.Needs.LateralNeck, Construction.Needs.Capitellum];

    private protected override Line Axis(in LateralGeometry film) => film.Neck;
}
