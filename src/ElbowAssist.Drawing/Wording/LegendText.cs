using System.Globalization;
using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Anatomy.Rules;
using ElbowAssist.Reading;

namespace ElbowAssist.Drawing.Wording;

/// <summary>A paragraph of the legend.</summary>
/// <param name="Text">One or two sentences.</param>
/// <param name="IsHeading">Whether it heads what follows.</param>
internal sealed record Paragraph(string Text, bool IsHeading = false);

/// <summary>A reading in words: what was laid, what lies on either side of a limit, what was withheld and why, where to look.</summary>
internal static class LegendText
{
    public static IReadOnlyList<Paragraph> Of(FilmReading reading) =>
    [
        new("A second look at this film", IsHeading: true),
        new(Film(reading)),
        .. Section("What is said of this film contradicts itself", reading.Reasons
            .Where(r => r.Code.EndsWith("-contradicted", StringComparison.Ordinal)).Select(r => r.Text)),
        .. reading.Adequacy.Refused ? Refusal(reading) : Laid(reading),
        new("Caution", IsHeading: true),
        new(reading.CautionText),
        new($"{reading.Tool.Name} {reading.Tool.Version}"),
    ];

    private static IEnumerable<Paragraph> Refusal(FilmReading reading) =>
        [new("No reading of this film", IsHeading: true), .. reading.Reasons.Select(r => new Paragraph(r.Text))];

    private static IEnumerable<Paragraph> Laid(FilmReading reading)
    {
        var sentences = reading.Reasons.ToDictionary(r => r.Code, r => r.Text, StringComparer.Ordinal);
        foreach (var p in Section("Measured: value (redraw interval)", reading.Measurements
            .Where(m => m.State == MeasurementState.Measured)
            .Select(m => $"{Sentence(MeasurementTitles.Of(m.Name))}: {Figures.Of(m)}.")))
        {
            yield return p;
        }

        foreach (var p in Section("On either side of a limit", reading.Measurements
            .Where(m => m.State == MeasurementState.EitherSide)
            .Select(m => string.Join(' ', [$"{Sentence(MeasurementTitles.Of(m.Name))}: {Figures.Of(m)}.", .. Texts(m.Reasons, sentences)]))))
        {
            yield return p;
        }

        foreach (var p in Section("Withheld", reading.Measurements
            .Where(m => m.State == MeasurementState.Withheld)
            .Select(m => (m.Name, m.Reasons))
            .Concat(reading.Adequacy.CannotCarry.Where(c => reading.Measurements.All(m => m.Name != c.Name)).Select(c => (c.Name, c.Reasons)))
            .GroupBy(w => string.Join(' ', Texts(w.Reasons, sentences)), StringComparer.Ordinal)
            .Select(g => $"{Sentence(string.Join("; ", g.Select(w => MeasurementTitles.Of(w.Name))))}: {(g.Key.Length > 0 ? g.Key : "this film cannot carry it.")}")))
        {
            yield return p;
        }

        foreach (var p in Section("Look for yourself", reading.Evidence
            .Select(e => $"{Sentence(MeasurementTitles.Of(e.Name))}: {(e.State == EvidenceState.LookHere ? "look here" : "not assessable")}.")
            .Concat(reading.Prompts.Take(ElbowRules.VisibleAtOnce).Select(p => p.Text))))
        {
            yield return p;
        }
    }

    private static IEnumerable<Paragraph> Section(string heading, IEnumerable<string> texts) =>
        texts.ToList() is { Count: > 0 } any ? [new Paragraph(heading, IsHeading: true), .. any.Select(t => new Paragraph(t))] : [];

    private static IEnumerable<string> Texts(IReadOnlyList<string> codes, Dictionary<string, string> sentences) =>
        codes.Select(c => sentences.GetValueOrDefault(c)).OfType<string>();

    private static string Film(FilmReading reading)
    {
        var view = reading.View.Name switch
        {
            View.Lateral => "Lateral view",
            View.Ap => "AP view",
            View.Oblique => "Oblique view",
            _ => "View not recognised",
        };
        var side = reading.Side == Side.Unknown ? "side not stated" : reading.Side == Side.Left ? "left" : "right";
        var age = reading.Patient.AgeMonths is { } months ? Age(months) : "age not stated";
        var sex = reading.Patient.Sex switch { Sex.Female => "female", Sex.Male => "male", _ => "sex not stated" };
        var spacing = reading.Image is { RowSpacingMm: not null } image ? $"spacing from: {image.SpacingSource}" : "spacing not known, so no lengths";
        return $"{view}, {side}, {age}, {sex}; {spacing}.";
    }

    private static string Age(int months) => months switch
    {
        < 24 => string.Create(CultureInfo.InvariantCulture, $"{months} months"),
        < 216 => string.Create(CultureInfo.InvariantCulture, $"{months / 12} years {months % 12} months"),
        _ => string.Create(CultureInfo.InvariantCulture, $"{months / 12} years"),
    };

    private static string Sentence(string text) => char.ToUpperInvariant(text[0]) + text[1..];

    /// <summary>Who laid what is drawn, as words beside a sample of the line.</summary>
    public static IReadOnlyList<(LandmarkSource Source, string Text)> Key(FilmReading reading) =>
    [
        .. reading.Landmarks.Where(l => l.Position is not null).Select(l => l.Source).Distinct().Order()
            .Select(s => (s, s == LandmarkSource.Reader ? "laid by the reader" : "laid by the tool, a proposal")),
    ];
}
