using ElbowAssist.Anatomy.Measurements.Construction;
using ElbowAssist.Geometry;

namespace ElbowAssist.Anatomy.Measurements.TrueLateral;

/// <summary>Distance between the centres of the capitellar and the medial trochlear arc over the capitellar diameter.</summary>
internal sealed class ArcOffset : LateralMeasurement
{
    /// <summary>Stable name.</summary>
    public const string MeasurementName = "true-lateral.arc-offset";

    /// <inheritdoc/>
    public override string Name => MeasurementName;

    /// <inheritdoc/>
    public override string Unit => "1";

    /// <inheritdoc/>
    public override string Note =>
        "Distance between the centres of the capitellar arc and the arc of the medial trochlear lip over the capitellar diameter: " +
        "0 on a true lateral, growing as the film or the distal humerus is rotated. Only where the trochlea is ossified.";

    /// <inheritdoc/>
    public override string Source => "construction of this project";

    /// <inheritdoc/>
    public override IReadOnlyList<LandmarkNeed> Needs { get; } = [Construction.Needs.Capitellum, Construction.Needs.Trochlea];

    /// <inheritdoc/>
    public override IReadOnlyList<string> Circles => ["capitellum", "trochlea"];

    internal override int LineCount => 0;

    internal override double Lay(in LateralGeometry film, Span<Line> lines) =>
        film.Capitellum.Centre.DistanceTo(film.Trochlea.Centre) / (2 * film.Capitellum.Radius);
}
