using System.Globalization;
using ElbowAssist.Drawing.Wording;
using ElbowAssist.Reading;
using ElbowAssist.Reading.Studies;

namespace ElbowAssist.Drawing.Report;

/// <summary>What films say together: across views, sides and times.</summary>
internal static class TogetherContents
{
    public static IEnumerable<string> Of(Study study) =>
    [
        .. study.Conflicts.Select(c => c.Text),
        .. study.CrossViewNotes.Select(n => n.Text),
        .. study.SideDifferences.Select(d => Side(study, d)),
        .. study.TimeDifferences.Select(d => Time(study, d)),
    ];

    private static string Side(Study study, SideDifference d)
    {
        var limit = d.State switch
        {
            DifferenceState.BeyondLimit => string.Create(CultureInfo.InvariantCulture, $" The whole interval lies beyond the limit of {d.Limit:0}°."),
            DifferenceState.EitherSideOfLimit => string.Create(CultureInfo.InvariantCulture, $" The interval lies on both sides of the limit of {d.Limit:0}°."),
            _ => "",
        };
        return $"{Name(d.Name)}, {Films(study, d.FirstFilmId)} minus {Films(study, d.SecondFilmId)}: {Change(d.Value, d.Redraw95, d.Unit)}.{limit}";
    }

    private static string Time(Study study, TimeDifference d) =>
        $"{Name(d.Name)}, {Films(study, d.LaterFilmId)} minus {Films(study, d.EarlierFilmId)}: {Change(d.Value, d.Redraw95, d.Unit)}. This judges no position as restored.";

    private static string Films(Study study, string id)
    {
        var film = study.Films.First(f => f.Id == id);
        return $"{ReportWords.Side(film.Side)} {ReportWords.View(film.View)} {ReportWords.Context(film.Context)}";
    }

    private static string Name(string name) => ReportWords.Sentence(MeasurementTitles.Of(name));

    private static string Change(double value, Interval interval, string unit)
    {
        var (format, suffix) = unit switch
        {
            "deg" => ("+0;−0;0", "°"),
            "mm" => ("+0.0;−0.0;0.0", " mm"),
            _ => ("+0.00;−0.00;0.00", ""),
        };
        string Number(double v) => v.ToString(format, CultureInfo.InvariantCulture) + suffix;
        return $"{Number(value)} (redraw interval {Number(interval.Low)} to {Number(interval.High)})";
    }
}
