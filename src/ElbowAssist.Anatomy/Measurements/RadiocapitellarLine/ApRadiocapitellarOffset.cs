using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Anatomy.Measurements.Construction;
using ElbowAssist.Geometry;

namespace ElbowAssist.Anatomy.Measurements.RadiocapitellarLine;

/// <summary>
/// Offset of a radial axis from the middle of the capitellum over the capitellum's extent, both square to the axis;
/// positive toward the lateral side.
/// </summary>
internal abstract class ApRadiocapitellarOffset : ApMeasurement
{
    private static readonly int LateralEdge = Index(LandmarkNames.CapitellumEdgeLateral);
    private static readonly int MedialEdge = Index(LandmarkNames.CapitellumEdgeMedial);

    /// <inheritdoc/>
    public override string Unit => "1";

    /// <inheritdoc/>
    public override string Source => RadiocapitellarOffset.Source;

    internal override int LineCount => 1;

    /// <inheritdoc/>
    public override IReadOnlyList<double> DecisionLimits(Patient patient) => RadiocapitellarOffset.Limits;

    private protected abstract Line Axis(in ApGeometry film);

    internal sealed override double Lay(in ApGeometry film, Span<Line> lines)
    {
        var axis = Axis(film);
        lines[0] = axis;
        var lateral = Sides.NormalToward(axis.Direction, film.RadialLateral);
        return RadiocapitellarOffset.Of(
            lateral.Dot(film[MedialEdge] - axis.Point), lateral.Dot(film[LateralEdge] - axis.Point));
    }
}
