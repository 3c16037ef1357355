using ElbowAssist.Geometry;

namespace ElbowAssist.Anatomy.Measurements;

/// <summary>A measurement on a film's landmarks, before any question of what the film can carry.</summary>
public sealed record MeasuredValue
{
    /// <summary>What was measured.</summary>
    public required MeasurementDefinition Definition { get; init; }

    /// <summary>Value in the definition's unit, or null with <see cref="Reasons"/>.</summary>
    public double? Value { get; init; }

    /// <summary>
    /// Where the value would fall in 95 of 100 repeated layings on this film; null without a value or without spread.
    /// </summary>
    public (double Low, double High)? Redraw95 { get; init; }

    /// <summary>Probability of each zone, or null where there are none or there is no spread.</summary>
    public IReadOnlyDictionary<string, double>? Zones { get; init; }

    /// <summary>Reason codes where there is no value.</summary>
    public IReadOnlyList<string> Reasons { get; init; } = [];

    /// <summary>Lines of the construction in pixels of the original image; empty without a value.</summary>
    public IReadOnlyList<MeasuredLine> Lines { get; init; } = [];

    /// <summary>Circles of the construction in pixels of the original image; empty without a value.</summary>
    public IReadOnlyList<MeasuredCircle> Circles { get; init; } = [];
}

/// <summary>A line of a construction with the spread of its place and direction over the redraws.</summary>
/// <param name="Line">Pixels of the original image; the direction has length 1.</param>
/// <param name="OffsetVariance">Variance across the line at its point, px²; 0 without spread.</param>
/// <param name="OffsetAngleCovariance">Covariance of offset and angle, px·rad.</param>
/// <param name="AngleVariance">Variance of the direction, rad².</param>
public sealed record MeasuredLine(Line Line, double OffsetVariance, double OffsetAngleCovariance, double AngleVariance);

/// <summary>A circle of a construction. Where rows and columns differ in spacing the radius is the mean of both.</summary>
/// <param name="Name"><c>capitellum</c> or <c>trochlea</c>.</param>
/// <param name="Circle">Pixels of the original image.</param>
public sealed record MeasuredCircle(string Name, Circle Circle);
