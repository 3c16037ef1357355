using System.Globalization;
using System.Text;
using System.Xml.Linq;
using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Rules.Growth;
using ElbowAssist.Reading;
using static ElbowAssist.Drawing.Growth.SvgElements;

namespace ElbowAssist.Drawing.Growth;

/// <summary>
/// The elbow's ossification centres at an age: from when to when each appears and joins, by every series held; which may
/// change places; what the reader marked; and where a missing medial epicondyle should lie. States are told by words and
/// pattern, never by colour.
/// </summary>
public static class GrowthStripSvg
{
    private const double Width = 760;
    private const double Top = 46;
    private const double Row = 34;
    private const double MarkColumn = 592;
    private static readonly AgeAxis Axis = new(128, 566);

    /// <summary>The strip as UTF-8 text.</summary>
    /// <param name="patient">Age and sex; without a sex both tables are drawn, without an age no line for it.</param>
    /// <param name="marks">The reader's marks; a missing entry is one not checked.</param>
    public static byte[] Write(Patient patient, IReadOnlyDictionary<GrowthCentre, CentreMark> marks) =>
        Encoding.UTF8.GetBytes(Drawing(patient, marks).ToString() + "\n");

    internal static XElement Drawing(Patient patient, IReadOnlyDictionary<GrowthCentre, CentreMark> marks)
    {
        ArgumentNullException.ThrowIfNull(patient);
        ArgumentNullException.ThrowIfNull(marks);
        var centres = Enum.GetValues<GrowthCentre>();
        var bottom = Top + (Row * centres.Length);
        var svg = Element("svg",
            At("viewBox", string.Create(CultureInfo.InvariantCulture, $"0 0 {Width} {bottom + 80 + MissingEpicondyle.Height}")),
            At("font-family", "DejaVu Sans, Verdana, sans-serif"),
            At("fill", "#222"),
            Element("title", "Ossification centres of the elbow by age"),
            Element("desc", Caution.Text),
            Patterns());
        svg.Add(Scale(bottom));
        for (var i = 0; i < centres.Length; i++)
        {
            svg.Add(Centre(centres[i], Top + (Row * i), patient, marks.GetValueOrDefault(centres[i])));
        }

        svg.Add(Swap(1, "may swap"), Swap(3, "may swap"));
        if (patient.AgeMonths is { } months)
        {
            var x = Axis.At(months / 12.0);
            svg.Add(Line(x, Top - 12, x, bottom, 1.6), Text(x, Top - 16, GrowthWords.Age(months), 11, x > Axis.Right - 40 ? "end" : "middle", bold: true));
        }

        svg.Add(Key(bottom + 34), MissingEpicondyle.Drawing(bottom + 72));
        return svg;
    }

    private static XElement Patterns() => Element("defs",
        Element("pattern", At("id", "appears"), At("width", 6), At("height", 6), At("patternUnits", "userSpaceOnUse"),
            Element("rect", At("width", 6), At("height", 6), At("fill", "#fff")),
            Element("path", At("d", "M0 6 L6 0"), At("stroke", "#777"), At("stroke-width", 1))),
        Element("pattern", At("id", "joins"), At("width", 4), At("height", 4), At("patternUnits", "userSpaceOnUse"),
            Element("rect", At("width", 4), At("height", 4), At("fill", "#fff")),
            Element("path", At("d", "M2 0 V4 M0 2 H4"), At("stroke", "#999"), At("stroke-width", 0.7))));

    private static IEnumerable<XElement> Scale(double bottom)
    {
        yield return Text(MarkColumn, Top - 16, "reader's mark and the series", 11);
        for (var year = 0; year <= AgeAxis.Years; year += 2)
        {
            var x = Axis.At(year);
            yield return Line(x, Top - 4, x, bottom, 0.5, null, "#ccc");
            yield return Text(x, bottom + 13, year.ToString(CultureInfo.InvariantCulture), 10, "middle");
        }

        yield return Text(Axis.Right + 12, bottom + 13, "years", 10);
    }

    private static IEnumerable<XElement> Centre(GrowthCentre centre, double y, Patient patient, CentreMark mark)
    {
        var name = centre.InWords();
        yield return Text(8, y + 20, char.ToUpperInvariant(name[0]) + name[1..], 11.5);
        Sex[] sexes = patient.Sex is { } known ? [known] : [Sex.Female, Sex.Male];
        var height = sexes.Length == 1 ? 16.0 : 12.0;
        for (var i = 0; i < sexes.Length; i++)
        {
            var top = y + (sexes.Length == 1 ? 8 : 4 + (i * 14));
            var appears = GrowthTable.Appearance(centre, sexes[i]);
            var joins = GrowthTable.Fusion(centre, sexes[i]);
            yield return Line(Axis.At(appears.To), top + (height / 2), Axis.At(joins.From), top + (height / 2), 1.2);
            // The two spans overlap in some centres: one takes the upper half of the row, the other the lower. What rests on
            // an assumed span alone stays white.
            yield return Span(appears, top, height / 2, "#fff");
            yield return Span(GrowthTable.PublishedAppearance(centre, sexes[i]), top, height / 2, "url(#appears)");
            yield return Span(joins, top + (height / 2), height / 2, "#fff");
            yield return Span(GrowthTable.PublishedFusion(centre, sexes[i]), top + (height / 2), height / 2, "url(#joins)");
            foreach (var median in GrowthTable.Of(centre, sexes[i]).Select(r => r.AppearanceMedian).OfType<double>())
            {
                yield return Line(Axis.At(median), top - 2, Axis.At(median), top + (height / 2) + 1, 1.8);
            }

            if (sexes.Length == 2)
            {
                yield return Text(Axis.Left - 4, top + 9, i == 0 ? "F" : "M", 9, "end");
            }
        }

        yield return Text(MarkColumn, y + 20, GrowthWords.MarkAndVerdict(GrowthJudgement.Of(centre, mark, patient)), 11.5);
    }

    private static XElement Span(AgeSpan span, double y, double height, string fill) =>
        Rect(Axis.At(span.From), y, Math.Max(1, Axis.At(span.To) - Axis.At(span.From)), height, fill);

    private static IEnumerable<XElement> Swap(int upperRow, string words)
    {
        var (from, to) = (Top + (Row * upperRow) + 16, Top + (Row * (upperRow + 1)) + 16);
        var x = MarkColumn - 8;
        yield return Path(string.Create(CultureInfo.InvariantCulture, $"M{x} {from} h5 V{to} h-5"));
        yield return Text(MarkColumn, ((from + to) / 2) + 3, words, 9);
    }

    private static IEnumerable<XElement> Key(double y)
    {
        yield return Rect(8, y - 9, 22, 10, "url(#appears)");
        yield return Text(36, y, "appears, first to last of all series", 10);
        yield return Line(230, y - 11, 230, y + 3, 1.6);
        yield return Text(237, y, "medians", 10);
        yield return Rect(300, y - 9, 22, 10, "url(#joins)");
        yield return Text(328, y, "joins the shaft, first to last", 10);
        yield return Text(500, y, "Unexpected means outside every series.", 10);
        yield return Rect(8, y + 5, 22, 10, "#fff");
        yield return Text(36, y + 14, "White: " + char.ToLowerInvariant(GrowthTable.AssumedSpanSentence[0]) + GrowthTable.AssumedSpanSentence[1..], 10);
    }
}
