using System.Globalization;
using ElbowAssist.Reading;
using ElbowAssist.Reading.Studies;

namespace ElbowAssist.Drawing.Report;

/// <summary>Differences of a measurement between the sides and between two times, in words.</summary>
internal static class Differences
{
    public static IEnumerable<string> Of(Study study, string name, IReadOnlyList<StudyFilm> films)
    {
        foreach (var d in study.SideDifferences.Where(d => d.Name == name && films.Any(f => f.Id == d.FirstFilmId)))
        {
            var limit = d.State switch
            {
                DifferenceState.BeyondLimit => string.Create(CultureInfo.InvariantCulture, $"; the whole interval lies beyond the limit of {d.Limit:0}°"),
                DifferenceState.EitherSideOfLimit => string.Create(CultureInfo.InvariantCulture, $"; the interval lies on both sides of the limit of {d.Limit:0}°"),
                _ => "",
            };
            yield return $"{Film(study, d.FirstFilmId)} minus {Film(study, d.SecondFilmId)}: {Change(d.Value, d.Redraw95, d.Unit)}{limit}";
        }

        foreach (var d in study.TimeDifferences.Where(d => d.Name == name && films.Any(f => f.Id == d.LaterFilmId)))
        {
            yield return $"{Film(study, d.LaterFilmId)} minus {Film(study, d.EarlierFilmId)}: {Change(d.Value, d.Redraw95, d.Unit)}; this judges no position as restored";
        }
    }

    private static string Film(Study study, string id)
    {
        var film = study.Films.First(f => f.Id == id);
        return study.Films.Count(f => f.View == film.View && f.Side == film.Side) == 1
            ? ReportWords.Side(film.Side)
            : $"{ReportWords.Side(film.Side)} {ReportWords.Context(film.Context)}";
    }

    private static string Change(double value, Interval interval, string unit)
    {
        var (format, suffix) = unit switch
        {
            "deg" => ("+0;−0;0", "°"),
            "mm" => ("+0.0;−0.0;0.0", " mm"),
            _ => ("+0.00;−0.00;0.00", ""),
        };
        string Number(double v) => v.ToString(format, CultureInfo.InvariantCulture) + suffix;
        return $"{Number(value)} ({Number(interval.Low)} to {Number(interval.High)})";
    }
}
