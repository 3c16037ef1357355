using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Drawing.Marks;
using ElbowAssist.Drawing.Wording;
using ElbowAssist.Geometry;
using ElbowAssist.Reading;
using ElbowAssist.Reading.Assembly;

namespace ElbowAssist.Drawing.Overlay;

/// <summary>The words beside the film, counted from the top left of their own column.</summary>
/// <param name="Width">Width of the column, in pixels of the original image.</param>
/// <param name="Height">Height the words take.</param>
/// <param name="Marks">Words and samples of lines.</param>
internal sealed record LegendColumn(double Width, double Height, IReadOnlyList<Mark> Marks)
{
    private const string RedrawSentence =
        "Bands, ellipses and redraw intervals: where it would fall in 95 of 100 repeated layings on this film. They say nothing about fracture.";

    public static LegendColumn Of(FilmReading reading, FilmScale scale)
    {
        var width = 560 * scale.Unit;
        LegendColumn column;
        var size = 16.5 * scale.Unit;
        do
        {
            column = Set(reading, scale, width, size);
            size *= 0.96;
        }
        while (column.Height > scale.Height && size > 12 * scale.Unit);
        return column;
    }

    private static LegendColumn Set(FilmReading reading, FilmScale scale, double width, double size)
    {
        var pad = 20 * scale.Unit;
        var y = pad;
        var marks = new List<Mark>();
        foreach (var paragraph in LegendText.Of(reading))
        {
            if (paragraph.IsHeading && paragraph.Text == "Caution")
            {
                Key();
            }

            y += paragraph.IsHeading ? 0.55 * size : 0.2 * size;
            Write(paragraph.Text, pad, paragraph.IsHeading ? Ink.Words : Ink.Faint, paragraph.IsHeading ? 1.08 * size : size);
        }

        return new LegendColumn(width, y + pad, marks);

        void Key()
        {
            var key = LegendText.Key(reading);
            foreach (var (source, text) in key)
            {
                y += 0.5 * size;
                var style = LineStyle.Of("anterior-humeral-line", MeasurementState.Measured, source == LandmarkSource.Reader);
                var at = y + (0.75 * size);
                marks.Add(new Stroke([new Point(pad, at), new Point(pad + (4 * size), at)], style.Ink, style.Width * scale.Unit, [.. style.Dashes.Select(d => d * scale.Unit)]));
                Write(text, pad + (4.8 * size), Ink.Faint, size);
            }

            if (key.Count > 0)
            {
                y += 0.2 * size;
                Write(AssumedSpread.In(reading) ? $"{RedrawSentence} {AssumedSpread.Note}" : RedrawSentence, pad, Ink.Faint, size);
            }
        }

        void Write(string text, double left, Ink ink, double letters)
        {
            foreach (var line in TextLines.Wrap(text, width - left - pad, letters))
            {
                marks.Add(new Words(new Point(left, y + letters), line, letters, ink));
                y += 1.3 * letters;
            }
        }
    }
}
