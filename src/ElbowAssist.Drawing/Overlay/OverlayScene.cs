using ElbowAssist.Drawing.Marks;
using ElbowAssist.Drawing.Wording;
using ElbowAssist.Geometry;
using ElbowAssist.Reading;

namespace ElbowAssist.Drawing.Overlay;

/// <summary>Everything an overlay draws, in pixels of the original image, in the order of drawing.</summary>
/// <param name="Scale">Size of the film.</param>
/// <param name="OnFilm">Marks within the film's frame.</param>
/// <param name="Legend">Words outside the frame, or null.</param>
internal sealed record OverlayScene(FilmScale Scale, IReadOnlyList<MarkGroup> OnFilm, LegendColumn? Legend)
{
    private const string ShortCaution = "Not a medical device. For a second look only. " + Caution.LastSentence;

    /// <summary>What the letters on the film stand for, where letters name the lines.</summary>
    public IReadOnlyList<(string Letter, string Line)> Key { get; private init; } = [];

    public static OverlayScene Of(FilmReading reading, OverlayOptions options)
    {
        var scale = FilmScale.Of(reading);
        var key = new List<(string Letter, string Line)>();
        var groups = reading.Adequacy.Refused ? Refusal(reading, scale) : Laid(reading, options, scale, key);
        return new OverlayScene(
            scale,
            [.. groups, new MarkGroup("caution", null, null, [CautionLine(scale)])],
            options.Legend ? LegendColumn.Of(reading, scale) : null)
        {
            Key = key,
        };
    }

    private static List<MarkGroup> Laid(FilmReading reading, OverlayOptions options, FilmScale scale, List<(string Letter, string Line)> key)
    {
        var places = new LaidPlaces(reading.Landmarks);
        var groups = new List<MarkGroup>();
        if (!places.Any)
        {
            return groups;
        }

        var scrutiny = Scrutiny.Of(reading, places);
        var states = reading.Measurements.ToDictionary(m => m.Name, m => m.State, StringComparer.Ordinal);
        var ink = places.ByReader([]) ? Ink.Reader : Ink.Tool;
        groups.AddRange(reading.Circles.Select(c => new MarkGroup("circle", c.Name, null, CircleMarks.Of(c, ink, scale, scrutiny))));
        var bones = Bones.Of(reading, places);
        var labels = new LineLabels(scale, bones, [.. places.All]);
        labels.Keep(CautionLine(scale).At, Words.WidthOf(ShortCaution, scale.CautionSize), scale.CautionSize);
        var seen = new List<Line>();
        foreach (var line in reading.Lines.OrderByDescending(l => LineStyle.IsAlignment(l.Name)))
        {
            if (!states.TryGetValue(line.Name, out var state) || seen.Any(l => SameLine(l, line, scale)))
            {
                continue;
            }

            seen.Add(new Line(line.Point, line.Direction.Unit));
            var style = LineStyle.Of(line.Name, state, places.ByReader(LineStyle.LandmarksOf(line.Name)));
            var forearm = ForearmBeyondCapitellum(line, reading, bones);
            var drawn = LineMarks.Of(line, style, scale, places, p => !scrutiny.Any(r => r.Holds(p)) && !forearm(p));
            groups.Add(new MarkGroup("line", line.Name, StateWords.Of(state), drawn.Marks));
            if (line.Name == ThirdsRuler.MeasurementName)
            {
                var ruler = ThirdsRuler.Of(reading, drawn, scale, places, options.Letters);
                groups.Add(new MarkGroup("thirds", line.Name, null, ruler));
                foreach (var caption in ruler.OfType<Words>())
                {
                    labels.Keep(caption.At, Words.WidthOf(caption.Text, caption.Size), caption.Size);
                }
            }

            var text = options.Letters ? ((char)('A' + key.Count)).ToString() : LabelOf(line.Name, state);
            if (LineStyle.IsAlignment(line.Name) && drawn.Runs.Count > 0 &&
                labels.Place(text, drawn, options.Letters ? scale.LetterSize : scale.LabelSize) is { } words)
            {
                groups.Add(new MarkGroup("label", line.Name, null, [words]));
                if (options.Letters)
                {
                    key.Add((text, LabelOf(line.Name, state)));
                }
            }
        }

        if (options.Landmarks)
        {
            groups.AddRange(reading.Landmarks.Where(l => l.Position is not null).Select(l => LandmarkMarks.Of(l, l.Position!.Value, scale)));
        }

        return groups;
    }

    private static List<MarkGroup> Refusal(FilmReading reading, FilmScale scale)
    {
        var size = Math.Min(20 * scale.Unit, scale.Width / 36.0);
        var sentences = reading.Reasons.Select(r => r.Text).Prepend("No reading of this film.");
        var lines = sentences.SelectMany(s => TextLines.Wrap(s, 0.9 * scale.Width, size));
        return [new MarkGroup("refusal", null, null, [.. lines.Select((text, i) =>
            new Words(new Point(0.05 * scale.Width, (2 + (1.5 * i)) * size), text, size, Ink.Words))])];
    }

    private static Words CautionLine(FilmScale scale) =>
        new(new Point(10 * scale.Unit, scale.Height - (10 * scale.Unit)), ShortCaution, scale.CautionSize, Ink.Words);

    private static string LabelOf(string name, MeasurementState state) =>
        state == MeasurementState.EitherSide ? $"{MeasurementTitles.OfLine(name)} (either side)" : MeasurementTitles.OfLine(name);

    // Past the capitellum the anterior humeral line only leads to its ruler: it is left out wherever bone lies under it.
    private static Func<Point, bool> ForearmBeyondCapitellum(NamedLine line, FilmReading reading, IReadOnlyList<Region> bones)
    {
        if (LineStyle.SpanOf(line.Name).Count > 0 || reading.Circles.FirstOrDefault(c => c.Name == "capitellum") is not { } capitellum)
        {
            return _ => false;
        }

        var direction = line.Direction.Unit;
        var end = direction.Dot(capitellum.Centre - line.Point);
        return p =>
        {
            var beyond = Math.Sign(end) * (direction.Dot(p - line.Point) - end);
            return beyond > capitellum.Radius && bones.Any(b => b.Holds(p));
        };
    }

    // Two measurements may rest on one axis; it is drawn once.
    private static bool SameLine(Line drawn, NamedLine line, FilmScale scale) =>
        Math.Abs(drawn.Direction.Cross(line.Direction.Unit)) < 0.002 && Math.Abs(drawn.SignedDistanceTo(line.Point)) < 0.5 * scale.Unit;
}
