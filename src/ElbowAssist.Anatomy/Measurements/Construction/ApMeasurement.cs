using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Geometry;

namespace ElbowAssist.Anatomy.Measurements.Construction;

/// <summary>A measurement of the AP view.</summary>
internal abstract class ApMeasurement : MeasurementDefinition
{
    /// <inheritdoc/>
    public override View View => View.Ap;

    /// <summary>The value, NaN if undefined; fills <see cref="MeasurementDefinition.LineCount"/> lines, scaled coordinates.</summary>
    internal abstract double Lay(in ApGeometry film, Span<Line> lines);

    /// <summary>Index of a landmark in the AP set.</summary>
    private protected static int Index(string name) => LandmarkSet.Ap.IndexOf(name);
}
