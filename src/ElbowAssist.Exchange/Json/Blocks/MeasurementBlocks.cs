using System.Text.Json;
using ElbowAssist.Reading;

namespace ElbowAssist.Exchange.Json.Blocks;

/// <summary>What was laid and measured: lines, circles, measurements.</summary>
internal static class MeasurementBlocks
{
    public static void WriteLines(Utf8JsonWriter json, IReadOnlyList<NamedLine> lines) =>
        json.WriteObjects("lines", lines, static (j, line) =>
        {
            j.WriteString("name", line.Name);
            j.WritePoint("point", line.Point);
            j.WriteVector("direction", line.Direction);
            if (line.Spread is { } spread)
            {
                j.WriteSymmetric("spread", spread.OffsetVariance, spread.Covariance, spread.AngleVariance);
            }
        });

    public static IReadOnlyList<NamedLine> ReadLines(JsonCursor lines) => lines.Items(line =>
    {
        var direction = line.Required("direction");
        return new NamedLine(
            line.Required("name").Text(),
            line.Required("point").Point(),
            direction.Vector() is { Length: > 0 } d ? d : throw direction.Fail("must not be zero"))
        {
            Spread = line.Optional("spread")?.SymmetricMatrix() is { } s ? new LineSpread(s.XX, s.XY, s.YY) : null,
        };
    });

    public static void WriteCircles(Utf8JsonWriter json, IReadOnlyList<NamedCircle> circles) =>
        json.WriteObjects("circles", circles, static (j, circle) =>
        {
            j.WriteString("name", circle.Name);
            j.WritePoint("centre", circle.Centre);
            j.WriteNumber("radius", circle.Radius);
        });

    public static IReadOnlyList<NamedCircle> ReadCircles(JsonCursor circles) => circles.Items(circle =>
    {
        var radius = circle.Required("radius");
        return new NamedCircle(
            circle.Required("name").Text(),
            circle.Required("centre").Point(),
            radius.Number() is > 0 and var r ? r : throw radius.Fail("must be above 0"));
    });

    public static void WriteMeasurements(Utf8JsonWriter json, IReadOnlyList<Measurement> measurements) =>
        json.WriteObjects("measurements", measurements, static (j, m) =>
        {
            j.WriteString("name", m.Name);
            j.WriteNumberOrNull("value", m.Value);
            j.WriteString("unit", m.Unit);
            if (m.Redraw95 is { } redraw)
            {
                j.WriteNumbers("redraw95", redraw.Low, redraw.High);
            }
            else
            {
                j.WriteNull("redraw95");
            }

            j.WriteString("state", Vocabularies.State.WordOf(m.State));
            j.WriteWords("reasons", m.Reasons);
            if (m.Zones is { } zones)
            {
                j.WriteFigures("zones", zones);
            }
            else
            {
                j.WriteNull("zones");
            }

            j.WriteString("note", m.Note);
            j.WriteString("source", m.Source);
        });

    public static IReadOnlyList<Measurement> ReadMeasurements(JsonCursor measurements) => measurements.Items(m => new Measurement
    {
        Name = m.Required("name").Text(),
        Value = m.Nullable("value")?.Number(),
        Unit = m.Required("unit").Text(),
        Redraw95 = m.Nullable("redraw95") is { } redraw ? ReadInterval(redraw) : null,
        State = m.Required("state").Word(Vocabularies.State),
        Reasons = m.Required("reasons").Items(reason => reason.Text()),
        Zones = m.Nullable("zones")?.Figures(),
        Note = m.Required("note").Text(),
        Source = m.Required("source").Text(),
    });

    private static Interval ReadInterval(JsonCursor cursor)
    {
        var (low, high) = cursor.Pair();
        return low <= high ? new Interval(low, high) : throw cursor.Fail("must run from low to high");
    }
}
