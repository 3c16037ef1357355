using ElbowAssist.Anatomy.Measurements.Construction;
using ElbowAssist.Anatomy.Rules;
using ElbowAssist.Geometry;

namespace ElbowAssist.Anatomy.Measurements.AnteriorHumeralLine;

/// <summary>
/// Where a line along the anterior humeral cortex crosses the capitellum: 0 at the anterior and 1 at the posterior extreme
/// of its outline, both taken square to the line.
/// </summary>
internal abstract class AnteriorHumeralLinePosition : LateralMeasurement
{
    /// <inheritdoc/>
    public override string Unit => "1";

    /// <inheritdoc/>
    public override string Source => Publications.Herman.Citation;

    /// <inheritdoc/>
    public override IReadOnlyList<FilmCondition> Conditions => [FilmCondition.TrueView];

    /// <inheritdoc/>
    public override IReadOnlyList<Zone> Zones => AnteriorHumeralLineZones.All;

    /// <inheritdoc/>
    public override IReadOnlyList<string> Circles => ["capitellum"];

    internal override int LineCount => 1;

    /// <inheritdoc/>
    public override IReadOnlyList<double> DecisionLimits(Patient patient) => AnteriorHumeralLineZones.Limits;

    private protected abstract Line Cortex(in LateralGeometry film);

    internal sealed override double Lay(in LateralGeometry film, Span<Line> lines)
    {
        var line = Cortex(film);
        lines[0] = line;
        var posterior = Sides.NormalToward(line.Direction, -film.Anterior);
        var (front, back) = film.Reach(line.Point, posterior);
        return -front / (back - front);
    }
}
