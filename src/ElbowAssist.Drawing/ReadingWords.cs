using ElbowAssist.Drawing.Wording;
using ElbowAssist.Reading;

namespace ElbowAssist.Drawing;

/// <summary>The words a reading is told in, alike on overlay, report and page.</summary>
public static class ReadingWords
{
    /// <summary>Name of a measurement, a piece of evidence or a zone in words, beginning with a capital.</summary>
    public static string Title(string name)
    {
        var title = MeasurementTitles.Of(name);
        return title.Length == 0 ? title : char.ToUpperInvariant(title[0]) + title[1..];
    }

    /// <summary>Value, redraw interval and zones with no more digits than the spread can bear; null for a withheld measurement.</summary>
    public static string? Value(Measurement measurement)
    {
        ArgumentNullException.ThrowIfNull(measurement);
        return Figures.Of(measurement);
    }

    /// <summary>State word as results spell it.</summary>
    public static string State(MeasurementState state) => StateWords.Of(state);
}
