using ElbowAssist.Anatomy;
using ElbowAssist.Bench.Scoring;
using ElbowAssist.Bench.Statistics;

namespace ElbowAssist.Bench.Tables;

/// <summary>
/// Pictures without an elbow: how many were refused, how many were taken for an elbow in which view, and how many got a
/// measurement, with exact intervals of 95 % (Clopper and Pearson). Wanted are no measurements at all. A picture and its
/// disturbed version are no two independent draws: the interval of one version is the one to quote.
/// </summary>
public static class OtherPictureTable
{
    /// <summary>The table: all pictures, as taken and disturbed, and by what they show.</summary>
    public static Table Of(IReadOnlyList<OtherPictureReading> pictures)
    {
        ArgumentNullException.ThrowIfNull(pictures);
        return new Table(
            "not-elbows",
            "pictures without an elbow: refused, taken for an elbow by view, and measured (none is wanted); exact intervals of 95 %",
            [
                "group", "pictures", "refused", "lateral", "ap", "oblique", "takenShare", "takenLow", "takenHigh",
                "measured", "measuredShare", "measuredLow", "measuredHigh", "reasons",
            ],
            [.. Groups(pictures).Where(g => g.Pictures.Count > 0).Select(g => Row(g.Name, g.Pictures))]);
    }

    private static IEnumerable<(string Name, List<OtherPictureReading> Pictures)> Groups(IReadOnlyList<OtherPictureReading> pictures) =>
    [
        ("all", [.. pictures]),
        .. By(pictures, p => p.Version),
        .. By(pictures, p => p.Shows),
    ];

    private static IEnumerable<(string Name, List<OtherPictureReading> Pictures)> By(
        IReadOnlyList<OtherPictureReading> pictures, Func<OtherPictureReading, string> name) => pictures
        .GroupBy(name, StringComparer.Ordinal).Where(g => g.Key.Length > 0).OrderBy(g => g.Key, StringComparer.Ordinal)
        .Select(g => (g.Key, g.ToList()));

    private static IReadOnlyList<object> Row(string group, List<OtherPictureReading> pictures)
    {
        var taken = pictures.FindAll(p => !p.Reading.Adequacy.Refused);
        var measured = pictures.Count(p => p.IsMeasured);
        var (takenLow, takenHigh) = ClopperPearson.Interval(taken.Count, pictures.Count);
        var (measuredLow, measuredHigh) = ClopperPearson.Interval(measured, pictures.Count);
        var reasons = pictures.FindAll(p => p.Reading.Adequacy.Refused).SelectMany(p => p.Reading.Reasons.Select(r => r.Code).Distinct(StringComparer.Ordinal))
            .CountBy(code => code, StringComparer.Ordinal).OrderByDescending(r => r.Value).ThenBy(r => r.Key, StringComparer.Ordinal)
            .Select(r => FormattableString.Invariant($"{r.Key} {r.Value}"));
        return
        [
            group, pictures.Count, pictures.Count - taken.Count, In(View.Lateral), In(View.Ap), In(View.Oblique),
            PromiseTables.Share(taken.Count, pictures.Count), takenLow, takenHigh,
            measured, PromiseTables.Share(measured, pictures.Count), measuredLow, measuredHigh, string.Join("; ", reasons),
        ];

        int In(View view) => taken.Count(p => p.Reading.View.Name == view);
    }
}
