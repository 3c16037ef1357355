using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Anatomy.Measurements.Construction;
using ElbowAssist.Geometry;

namespace ElbowAssist.Anatomy.Measurements.AnteriorHumeralLine;

/// <summary>The anterior humeral line laid along the distal cortex.</summary>
internal sealed class DistalCortexPosition : AnteriorHumeralLinePosition
{
    /// <summary>Stable name.</summary>
    public const string MeasurementName = "anterior-humeral-line.position";

    /// <inheritdoc/>
    public override string Name => MeasurementName;

    /// <inheritdoc/>
    public override string OtherConstruction => ShaftCortexPosition.MeasurementName;

    /// <inheritdoc/>
    public override string Note =>
        "Line along the anterior humeral cortex 2.0 to 1.0 shaft widths above the fossa roof. Crossing of the capitellum square to " +
        "the line: 0 = anterior edge, 1 = posterior edge. The cortex is bowed: a line laid higher on the shaft can cross elsewhere.";

    /// <inheritdoc/>
    public override IReadOnlyList<LandmarkNeed> Needs { get; } =
    [
        LandmarkNeed.Range(ReasonCodes.HumeralLevelsMissing, LandmarkNames.HumerusAnterior, 3, 5),
        Construction.Needs.PosteriorCortex,
        Construction.Needs.Capitellum,
    ];

    private protected override Line Cortex(in LateralGeometry film) => film.AnteriorDistal;
}
