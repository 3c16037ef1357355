using System.Globalization;
using ElbowAssist.Reading;

namespace ElbowAssist.Drawing.Wording;

/// <summary>Values in words, with no more digits than their spread can bear.</summary>
internal static class Figures
{
    /// <summary>Value, redraw interval and zone, e.g. <c>39° (36° to 42°)</c>; null for a withheld measurement.</summary>
    public static string? Of(Measurement m)
    {
        if (m.Value is not { } value || m.State == MeasurementState.Withheld)
        {
            return null;
        }

        var text = m.Redraw95 is { } redraw
            ? $"{Number(value, m.Unit)} ({Number(redraw.Low, m.Unit)} to {Number(redraw.High, m.Unit)})"
            : $"{Number(value, m.Unit)} (spread not known)";
        if (m.Name.StartsWith("radiocapitellar-line", StringComparison.Ordinal))
        {
            return $"{text}; the capitellum ends at ±0.50";
        }

        return ZonesOf(m) is { } zones ? $"{text}, {zones}" : text;
    }

    // A zone that fewer than 1 in 40 layings would reach lies outside the redraw interval.
    private static string? ZonesOf(Measurement m)
    {
        var zones = m.Zones?.Where(z => z.Value >= 0.025).OrderByDescending(z => z.Value).ThenBy(z => z.Key, StringComparer.Ordinal)
            .Select(z => MeasurementTitles.Of(z.Key)).ToList() ?? [];
        return zones.Count == 0 ? null : string.Join(" or ", zones);
    }

    private static string Number(double value, string unit)
    {
        var (digits, suffix) = unit switch
        {
            "deg" => ("0", "°"),
            "mm" => ("0.0", " mm"),
            _ => ("0.00", ""),
        };
        var text = value.ToString(digits, CultureInfo.InvariantCulture) + suffix;
        return text.Trim('-', '0', '.', '°') is "" or " mm" ? text.TrimStart('-') : text.Replace('-', '−');
    }
}
