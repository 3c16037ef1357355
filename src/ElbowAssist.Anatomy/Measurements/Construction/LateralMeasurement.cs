using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Geometry;

namespace ElbowAssist.Anatomy.Measurements.Construction;

/// <summary>A measurement of the lateral view.</summary>
internal abstract class LateralMeasurement : MeasurementDefinition
{
    /// <inheritdoc/>
    public override View View => View.Lateral;

    /// <summary>The value, NaN if undefined; fills <see cref="MeasurementDefinition.LineCount"/> lines, scaled coordinates.</summary>
    internal abstract double Lay(in LateralGeometry film, Span<Line> lines);

    /// <summary>Index of a landmark in the lateral set.</summary>
    private protected static int Index(string name) => LandmarkSet.Lateral.IndexOf(name);
}
