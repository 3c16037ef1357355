using System.Globalization;
using System.Text;
using ElbowAssist.Anatomy;
using ElbowAssist.Bench.Scoring;

namespace ElbowAssist.Bench.Reports;

/// <summary>The scores of a set as plain text, one block per view and group.</summary>
public static class ScoreText
{
    /// <summary>The text; lengths in the unit of the films.</summary>
    public static string Of(IReadOnlyList<FilmScore> scores)
    {
        ArgumentNullException.ThrowIfNull(scores);
        var text = new StringBuilder();
        foreach (var view in scores.GroupBy(s => s.View).OrderBy(g => g.Key))
        {
            foreach (var group in FilmGroup.Standard(view))
            {
                if (GroupSummary.Of(group, view) is { } summary)
                {
                    Append(text, view.Key, summary, view.First().LengthUnit);
                }
            }
        }

        return text.ToString();
    }

    private static void Append(StringBuilder text, View view, GroupSummary s, string unit)
    {
        Line(text, $"== {view}, {s.Name}: {s.Films} films, {s.Refused} refused, view right {s.ViewRight}");
        Line(text, $"   landmarks seen: {s.VisibleReported:P1} of visible, {s.HiddenReported:P1} of hidden; in their 95 % ellipse {s.EllipseCoverage:P1}");
        Errors(text, "point, radial", s.PointRadial, unit);
        Errors(text, "contour, across", s.ContourNormal, unit);
        Errors(text, "contour, along", s.ContourSlip, unit);
        Errors(text, "view error", s.ViewError, "deg");
        foreach (var line in s.Lines)
        {
            Errors(text, line.Name + " angle", line.AngleDegrees, "deg");
        }

        foreach (var m in s.Measurements)
        {
            Line(text, $"   {m.Name}: {m.Measured} measured, {m.EitherSide} either-side, {m.Withheld} withheld");
            if (m.Error is not null)
            {
                Errors(text, "  |error|", m.Error, m.Unit);
                Line(text, $"      covered {m.Covered}/{m.Measured + m.EitherSide} ({m.CoverageLow:P1} to {m.CoverageHigh:P1}), median width {m.MedianWidth:F3}, width / median |error| {m.MedianWidth / m.Error.Median:F1}, zone calibration error {m.ZoneCalibrationError:F3}");
            }
        }

        Line(text, $"   reasons: {string.Join(", ", s.Reasons.Take(12).Select(r => string.Create(CultureInfo.InvariantCulture, $"{r.Key} {r.Value}")))}");
    }

    private static void Errors(StringBuilder text, string name, ErrorSummary? e, string unit)
    {
        if (e is not null)
        {
            Line(text, $"   {name,-44} mean {e.Mean:F3} ({e.MeanLow:F3} to {e.MeanHigh:F3}), median {e.Median:F3}, p90 {e.P90:F3}, p95 {e.P95:F3}, most {e.Maximum:F2} {unit}, n {e.Count}");
        }
    }

    private static void Line(StringBuilder text, FormattableString line) =>
        text.Append(line.ToString(CultureInfo.InvariantCulture)).Append('\n');
}
