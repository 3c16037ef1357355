using System.Globalization;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Drawing.Wording;
using ElbowAssist.Reading;
using ElbowAssist.Reading.Assembly;
using ElbowAssist.Reading.Studies;

namespace ElbowAssist.Drawing.Report;

/// <summary>What a report says of each film.</summary>
internal static class FilmContents
{
    public static FilmContent Of(StudyFilm film)
    {
        var reading = film.Reading;
        var sentences = reading.Reasons.ToDictionary(r => r.Code, r => r.Text, StringComparer.Ordinal);
        return new FilmContent(
            film.Id,
            ReportWords.Film(film),
            Facts(reading),
            [.. reading.Adequacy.CanCarry.Select(MeasurementTitles.Of)],
            CannotCarry(reading, sentences),
            reading.Adequacy.Refused);
    }

    private static IReadOnlyList<string> CannotCarry(FilmReading reading, Dictionary<string, string> sentences)
    {
        if (reading.Adequacy.Refused)
        {
            return [.. reading.Reasons.Select(r => r.Text)];
        }

        var withheld = reading.Measurements.Where(m => m.State == MeasurementState.Withheld).Select(m => (m.Name, m.Reasons))
            .Concat(reading.Adequacy.CannotCarry.Select(c => (c.Name, c.Reasons)))
            .DistinctBy(w => w.Name);
        return
        [
            .. withheld.GroupBy(w => string.Join(' ', Sentences(w.Reasons, sentences)), StringComparer.Ordinal)
                .Select(g => $"{ReportWords.Sentence(string.Join("; ", g.Select(w => MeasurementTitles.Of(w.Name))))}: {(g.Key.Length > 0 ? g.Key : "this film cannot carry it.")}"),
            .. reading.Evidence.Where(e => e.State == EvidenceState.NotAssessable && reading.Adequacy.CannotCarry.All(c => c.Name != e.Name))
                .Select(e => $"{ReportWords.Sentence(MeasurementTitles.Of(e.Name))}: not assessable on this film."),
        ];
    }

    private static IEnumerable<string> Sentences(IReadOnlyList<string> codes, Dictionary<string, string> sentences) =>
        codes.Select(c => sentences.GetValueOrDefault(c)).OfType<string>();

    private static string Facts(FilmReading reading)
    {
        var image = reading.Image;
        var spacing = image is { RowSpacingMm: { } row, ColumnSpacingMm: { } column }
            ? string.Create(CultureInfo.InvariantCulture, $"spacing {row:0.###} by {column:0.###} mm ({image.SpacingSource})")
            : "spacing not known, so no lengths";
        var placed = reading.Landmarks.Where(l => l.Position is not null).ToList();
        var readers = placed.Count(l => l.Source == LandmarkSource.Reader);
        var laid = placed.Count == 0
            ? "no landmarks"
            : string.Create(CultureInfo.InvariantCulture, $"{readers} landmarks placed by the reader, {placed.Count - readers} proposed by the tool{(AssumedSpread.In(reading) ? ", their spread assumed" : "")}");
        var error = reading.View.ErrorDegrees is { } degrees
            ? string.Create(CultureInfo.InvariantCulture, $"; turned away from the true view by about {degrees:0}° as estimated")
            : "";
        return string.Create(CultureInfo.InvariantCulture, $"{image.File}, {image.Width} by {image.Height} pixels, {spacing}; {laid}{error}.");
    }
}
