using ElbowAssist.Anatomy.Measurements;

namespace ElbowAssist.Reading;

/// <summary>State of a measurement.</summary>
public enum MeasurementState
{
    /// <summary>A value with its redraw interval.</summary>
    Measured,

    /// <summary>A value whose redraw interval, or a second accepted construction, lies on the other side of a decision limit.</summary>
    EitherSide,

    /// <summary>No value, line or circle; reasons instead.</summary>
    Withheld,
}

/// <summary>One measurement of a reading.</summary>
public sealed record Measurement
{
    /// <summary>Stable name, e.g. <c>anterior-humeral-line.position</c>.</summary>
    public required string Name { get; init; }

    /// <summary>Value in <see cref="Unit"/>, or null if withheld.</summary>
    public required double? Value { get; init; }

    /// <summary><c>deg</c>, <c>mm</c> or <c>1</c> (a ratio).</summary>
    public required string Unit { get; init; }

    /// <summary>Where the value would fall in 95 of 100 repeated layings on this film; null if withheld.</summary>
    public required Interval? Redraw95 { get; init; }

    /// <summary>Measured, either-side or withheld.</summary>
    public required MeasurementState State { get; init; }

    /// <summary>Reason codes of a withheld or either-side measurement.</summary>
    public required IReadOnlyList<string> Reasons { get; init; }

    /// <summary>Probability of each zone, or null where the measurement has none or is withheld.</summary>
    public required IReadOnlyDictionary<string, double>? Zones { get; init; }

    /// <summary>Construction, sign and caution in a sentence or two.</summary>
    public required string Note { get; init; }

    /// <summary>Publication behind construction or reference range, or <c>construction of this project</c>.</summary>
    public required string Source { get; init; }

    /// <summary>A value laid on exact landmarks, as the truth of a simulated film: measured, without an interval.</summary>
    public static Measurement Exact(MeasuredValue value)
    {
        ArgumentNullException.ThrowIfNull(value);
        return new Measurement
        {
            Name = value.Definition.Name,
            Value = value.Value,
            Unit = value.Definition.Unit,
            Redraw95 = null,
            State = MeasurementState.Measured,
            Reasons = [],
            Zones = null,
            Note = value.Definition.Note,
            Source = value.Definition.Source,
        };
    }
}

/// <summary>A closed interval.</summary>
public readonly record struct Interval(double Low, double High);
