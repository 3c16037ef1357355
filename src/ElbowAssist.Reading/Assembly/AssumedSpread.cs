namespace ElbowAssist.Reading.Assembly;

/// <summary>Landmarks laid without saying how surely, as COCO keypoints are: their spread is assumed, and that is said.</summary>
public static class AssumedSpread
{
    /// <summary>Stands in the note of every measurement that uses such a landmark. The figure is the limit <c>reader.assumed-spread</c>.</summary>
    public const string Note = "The interval rests on an assumed spread of placements by hand, 3 % of the shaft width.";

    /// <summary>Whether any interval of a reading rests on an assumed spread.</summary>
    public static bool In(FilmReading reading)
    {
        ArgumentNullException.ThrowIfNull(reading);
        return reading.Measurements.Any(m => m.Note.Contains(Note, StringComparison.Ordinal));
    }
}
