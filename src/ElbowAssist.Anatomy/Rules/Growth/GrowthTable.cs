using static ElbowAssist.Anatomy.Rules.Growth.GrowthCentre;

namespace ElbowAssist.Anatomy.Rules.Growth;

/// <summary>
/// Ages of appearance and fusion by series. Where a series gives a median alone, a span of two years to either side
/// (never below birth) stands in for its scatter: a choice of this project, marked on the row. Medians of the database
/// series come from computed tomography, which shows a nucleus earlier than a film.
/// </summary>
public static class GrowthTable
{
    private const double AssumedHalfWidth = 2;

    /// <summary>What every output says that rests on such a span.</summary>
    public const string AssumedSpanSentence = "Where a series gives a median alone, two years to either side are assumed for it.";

    // 5 % and 95 % points of a logistic curve lie ln 19 scales from its median.
    private static readonly double LogisticReach = Math.Log(19);

    /// <summary>Every row.</summary>
    public static IReadOnlyList<CentreSeries> Rows { get; } =
    [
        .. Medians(Publications.Cheng, Sex.Female, (Capitellum, 1), (RadialHead, 5), (MedialEpicondyle, 5), (Trochlea, 9), (Olecranon, 9), (LateralEpicondyle, 10)),
        .. Medians(Publications.Cheng, Sex.Male, (Capitellum, 1), (RadialHead, 7), (MedialEpicondyle, 7), (Trochlea, 11), (Olecranon, 11), (LateralEpicondyle, 12)),
        .. Pooled(Capitellum, 0, 1, 10, 15),
        .. Pooled(RadialHead, 2, 6, 12, 16),
        .. Pooled(MedialEpicondyle, 2, 8, 13, 17),
        .. Pooled(Trochlea, 5, 11, 10, 18),
        .. Pooled(Olecranon, 6, 11, 13, 16),
        .. Pooled(LateralEpicondyle, 8, 13, 12, 16),
        Database(Capitellum, Sex.Female, 0.4, 0.1, 11.9),
        Database(Capitellum, Sex.Male, 0.6, 0.2, 13.9),
        Database(RadialHead, Sex.Female, 4.5, null, 11.2),
        Database(RadialHead, Sex.Male, 5.4, null, 13.1),
        Database(MedialEpicondyle, Sex.Female, 3.7, null, 12.3),
        Database(MedialEpicondyle, Sex.Male, 6.2, null, 14.3),
        Database(Trochlea, Sex.Female, 6.6, 1.2, 11.9),
        Database(Trochlea, Sex.Male, 8.1, 0.9, 13.9),
        Database(Olecranon, Sex.Female, 7.1, null, 11.9),
        Database(Olecranon, Sex.Male, 9.4, null, 14.3),
        Database(LateralEpicondyle, Sex.Female, 8.2, null, 11.9),
        Database(LateralEpicondyle, Sex.Male, 10.0, null, 13.9),
    ];

    /// <summary>The rows of a centre in one sex.</summary>
    public static IReadOnlyList<CentreSeries> Of(GrowthCentre centre, Sex sex) =>
        [.. Rows.Where(r => r.Centre == centre && r.Sex == sex)];

    /// <summary>From the earliest age of appearance in any series to the latest in any.</summary>
    public static AgeSpan Appearance(GrowthCentre centre, Sex sex)
    {
        var rows = Of(centre, sex);
        return new(rows.Min(r => r.Appearance.From), rows.Max(r => r.Appearance.To));
    }

    /// <summary>The same from the series that publish a span of their own; every centre has one.</summary>
    public static AgeSpan PublishedAppearance(GrowthCentre centre, Sex sex)
    {
        var rows = Of(centre, sex).Where(r => !r.SpanIsAssumed).ToList();
        return new(rows.Min(r => r.Appearance.From), rows.Max(r => r.Appearance.To));
    }

    /// <summary>From the earliest age of fusion to the latest in the series that publish a span of their own.</summary>
    public static AgeSpan PublishedFusion(GrowthCentre centre, Sex sex)
    {
        var spans = Of(centre, sex).Where(r => r is { Fusion: not null, FusionIsAssumed: false }).Select(r => r.Fusion!.Value).ToList();
        return new(spans.Min(s => s.From), spans.Max(s => s.To));
    }

    /// <summary>From the earliest age of fusion in any series to the latest in any.</summary>
    public static AgeSpan Fusion(GrowthCentre centre, Sex sex)
    {
        var spans = Of(centre, sex).Where(r => r.Fusion is not null).Select(r => r.Fusion!.Value).ToList();
        return new(spans.Min(s => s.From), spans.Max(s => s.To));
    }

    private static IEnumerable<CentreSeries> Medians(Publication source, Sex sex, params (GrowthCentre Centre, double Median)[] rows) =>
        rows.Select(r => new CentreSeries(r.Centre, sex, Around(r.Median), r.Median, null, source, SpanIsAssumed: true));

    private static IEnumerable<CentreSeries> Pooled(GrowthCentre centre, double from, double to, double fuseFrom, double fuseTo) =>
        new[] { Sex.Female, Sex.Male }.Select(sex => new CentreSeries(
            centre, sex, new(from, to), null, new(fuseFrom, fuseTo), Publications.Miyazaki, SpanIsAssumed: false));

    private static CentreSeries Database(GrowthCentre centre, Sex sex, double median, double? scale, double fused) => new(
        centre,
        sex,
        scale is { } s ? new(Math.Max(0, median - (LogisticReach * s)), median + (LogisticReach * s)) : Around(median),
        median,
        Around(fused),
        Publications.SubadultDatabase,
        SpanIsAssumed: scale is null,
        FusionIsAssumed: true);

    private static AgeSpan Around(double median)
    {
        var half = Math.Min(AssumedHalfWidth, median);
        return new(median - half, median + half);
    }
}
