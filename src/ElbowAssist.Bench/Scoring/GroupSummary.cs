using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Bench.Statistics;
using ElbowAssist.Reading;

namespace ElbowAssist.Bench.Scoring;

/// <summary>The figures of one group of films of one view.</summary>
public sealed record GroupSummary
{
    /// <summary>Group.</summary>
    public required string Name { get; init; }

    /// <summary>Number of films.</summary>
    public required int Films { get; init; }

    /// <summary>Films refused as a whole.</summary>
    public required int Refused { get; init; }

    /// <summary>Films whose view was taken rightly, refused ones included.</summary>
    public required int ViewRight { get; init; }

    /// <summary>Estimated against true rotation, degrees.</summary>
    public required ErrorSummary? ViewError { get; init; }

    /// <summary>Radial error of point landmarks.</summary>
    public required ErrorSummary? PointRadial { get; init; }

    /// <summary>Error across the outline of contour landmarks.</summary>
    public required ErrorSummary? ContourNormal { get; init; }

    /// <summary>Error along the outline of contour landmarks.</summary>
    public required ErrorSummary? ContourSlip { get; init; }

    /// <summary>Share of truly visible landmarks that were given a position, over films not refused.</summary>
    public required double VisibleReported { get; init; }

    /// <summary>Share of truly hidden landmarks that were given a position all the same.</summary>
    public required double HiddenReported { get; init; }

    /// <summary>Share of landmarks within the 95 % ellipse of their stated covariance.</summary>
    public required double EllipseCoverage { get; init; }

    /// <summary>Line errors by line name.</summary>
    public required IReadOnlyList<LineSummary> Lines { get; init; }

    /// <summary>Measurement errors by measurement name.</summary>
    public required IReadOnlyList<MeasurementSummary> Measurements { get; init; }

    /// <summary>Reason codes of these films with their counts, most frequent first.</summary>
    public required IReadOnlyList<KeyValuePair<string, int>> Reasons { get; init; }

    // 95 % point of chi-squared with two degrees of freedom.
    private const double EllipseLimit = 5.991464547107979;

    /// <summary>The summary of a group; null if it holds no film.</summary>
    public static GroupSummary? Of(FilmGroup group, IEnumerable<FilmScore> scores)
    {
        ArgumentNullException.ThrowIfNull(group);
        var films = scores.Where(group.Includes).ToList();
        if (films.Count == 0)
        {
            return null;
        }

        var landmarks = films.Where(f => !f.Refused).SelectMany(f => f.Landmarks).ToList();
        return new GroupSummary
        {
            Name = group.Name,
            Films = films.Count,
            Refused = films.Count(f => f.Refused),
            ViewRight = films.Count(f => f.ReadView == f.View),
            ViewError = ErrorSummary.Of(films.Select(f => Values([f.ViewErrorDifference]))),
            PointRadial = Landmarks(films, LandmarkKind.Point, l => l.Radial),
            ContourNormal = Landmarks(films, LandmarkKind.Contour, l => l.Normal),
            ContourSlip = Landmarks(films, LandmarkKind.Contour, l => l.Slip),
            VisibleReported = Share(landmarks.Where(l => l.TrulyVisible), l => l.ReportedVisible),
            HiddenReported = Share(landmarks.Where(l => !l.TrulyVisible), l => l.ReportedVisible),
            EllipseCoverage = Share(landmarks.Where(l => l.Mahalanobis is not null), l => l.Mahalanobis <= EllipseLimit),
            Lines =
            [
                .. films.SelectMany(f => f.Lines).GroupBy(l => l.Name).OrderBy(g => g.Key, StringComparer.Ordinal).Select(g =>
                    new LineSummary(
                        g.Key,
                        ErrorSummary.Of(g.Select(l => (IReadOnlyList<double>)[l.AngleDegrees]))!,
                        ErrorSummary.Of(g.Select(l => (IReadOnlyList<double>)[l.Offset]))!)),
            ],
            Measurements =
            [
                .. films.SelectMany(f => f.Measurements).GroupBy(m => m.Name).OrderBy(g => g.Key, StringComparer.Ordinal)
                    .Select(g => MeasurementSummary.Of(g.Key, [.. g])),
            ],
            Reasons =
            [
                .. films.SelectMany(f => f.Reasons.Distinct(StringComparer.Ordinal)).CountBy(r => r, StringComparer.Ordinal)
                    .OrderByDescending(c => c.Value).ThenBy(c => c.Key, StringComparer.Ordinal),
            ],
        };
    }

    private static ErrorSummary? Landmarks(List<FilmScore> films, LandmarkKind kind, Func<LandmarkScore, double?> error) =>
        ErrorSummary.Of(films.Select(f => Values(f.Landmarks.Where(l => l.Kind == kind).Select(error))));

    private static IReadOnlyList<double> Values(IEnumerable<double?> values) => [.. values.OfType<double>()];

    private static double Share<T>(IEnumerable<T> items, Func<T, bool> holds)
    {
        var list = items.ToList();
        return list.Count == 0 ? double.NaN : (double)list.Count(holds) / list.Count;
    }
}

/// <summary>Errors of one line.</summary>
public sealed record LineSummary(string Name, ErrorSummary AngleDegrees, ErrorSummary Offset);

/// <summary>Errors, states and coverage of one measurement.</summary>
/// <param name="Name">Measurement.</param>
/// <param name="Unit">Unit.</param>
/// <param name="Measured">Films measured.</param>
/// <param name="EitherSide">Films either-side.</param>
/// <param name="Withheld">Films withheld though the film has a true value.</param>
/// <param name="Error">Absolute error where a value was given.</param>
/// <param name="Covered">Redraw intervals that hold the truth.</param>
/// <param name="CoverageLow">Lower end of the exact 95 % interval of that share.</param>
/// <param name="CoverageHigh">Upper end.</param>
/// <param name="MedianWidth">Median width of the redraw intervals.</param>
/// <param name="ZoneCalibrationError">Expected calibration error of the zone probabilities; NaN without zones.</param>
public sealed record MeasurementSummary(
    string Name,
    string Unit,
    int Measured,
    int EitherSide,
    int Withheld,
    ErrorSummary? Error,
    int Covered,
    double CoverageLow,
    double CoverageHigh,
    double MedianWidth,
    double ZoneCalibrationError)
{
    internal static MeasurementSummary Of(string name, IReadOnlyList<MeasurementScore> scores)
    {
        var intervals = scores.Where(s => s.Redraw95 is not null).ToList();
        var covered = intervals.Count(s => s.Covered == true);
        var (low, high) = intervals.Count == 0 ? (double.NaN, double.NaN) : ClopperPearson.Interval(covered, intervals.Count);
        var forecasts = scores.Where(s => s.Zones is not null && s.TrueZone is not null)
            .SelectMany(s => s.Zones!.Select(z => (z.Value, string.Equals(z.Key, s.TrueZone, StringComparison.Ordinal)))).ToList();
        return new MeasurementSummary(
            name,
            scores[0].Unit,
            scores.Count(s => s.State == MeasurementState.Measured),
            scores.Count(s => s.State == MeasurementState.EitherSide),
            scores.Count(s => s.State == MeasurementState.Withheld),
            ErrorSummary.Of(scores.Where(s => s.Error is not null).Select(s => (IReadOnlyList<double>)[s.Error!.Value])),
            covered,
            low,
            high,
            Quantile.Median(intervals.Select(s => s.Redraw95!.Value.High - s.Redraw95!.Value.Low)),
            ExpectedCalibrationError.Of(forecasts));
    }
}
