using ElbowAssist.Anatomy.Measurements.Construction;
using ElbowAssist.Geometry;

namespace ElbowAssist.Anatomy.Measurements.RadiocapitellarLine;

/// <summary>
/// Offset of a radial axis from the middle of the capitellum over the capitellum's extent, both square to the axis;
/// positive toward the flexor side. The axis crosses the capitellum while the offset lies between −0.5 and 0.5.
/// </summary>
internal abstract class LateralRadiocapitellarOffset : LateralMeasurement
{
    /// <inheritdoc/>
    public override string Unit => "1";

    /// <inheritdoc/>
    public override string Source => RadiocapitellarOffset.Source;

    /// <inheritdoc/>
    public override IReadOnlyList<string> Circles => ["capitellum"];

    internal override int LineCount => 1;

    /// <inheritdoc/>
    public override IReadOnlyList<double> DecisionLimits(Patient patient) => RadiocapitellarOffset.Limits;

    private protected abstract Line Axis(in LateralGeometry film);

    internal sealed override double Lay(in LateralGeometry film, Span<Line> lines)
    {
        var axis = Axis(film);
        lines[0] = axis;
        var flexor = Sides.NormalToward(axis.Direction, film.Flexor);
        var (low, high) = film.Reach(axis.Point, flexor);
        return RadiocapitellarOffset.Of(low, high);
    }
}
