using System.Xml;
using ElbowAssist.Drawing.Marks;
using ElbowAssist.Geometry;

namespace ElbowAssist.Drawing;

/// <summary>Marks as SVG elements.</summary>
internal static class SvgMarks
{
    public static void WriteGroup(XmlWriter xml, MarkGroup group, double unit, bool halo)
    {
        xml.WriteStartElement("g", "http://www.w3.org/2000/svg");
        xml.WriteAttributeString("class", group.Kind);
        if (group.Name is { } name)
        {
            xml.WriteAttributeString("data-name", name);
        }

        if (group.State is { } state)
        {
            xml.WriteAttributeString("data-state", state);
        }

        foreach (var mark in group.Marks)
        {
            Write(xml, mark, unit, halo);
        }

        xml.WriteEndElement();
    }

    private static void Write(XmlWriter xml, Mark mark, double unit, bool halo)
    {
        switch (mark)
        {
            case Band band:
                OverlaySvg.Element(xml, "path", ("d", Path(band.Points) + "Z"), ("fill", band.Ink.Hex()), ("fill-opacity", Look.BandOpacity));
                break;
            case Stroke stroke:
                if (halo)
                {
                    OverlaySvg.Element(xml, "path", ("d", Path(stroke.Points)), ("fill", "none"), ("stroke", "#000"),
                        ("stroke-opacity", Look.HaloOpacity), ("stroke-width", stroke.Width + (Look.HaloWidth * unit)), ("stroke-dasharray", Dashes(stroke.Dashes)));
                }

                OverlaySvg.Element(xml, "path", ("d", Path(stroke.Points)), ("fill", "none"), ("stroke", stroke.Ink.Hex()),
                    ("stroke-width", stroke.Width), ("stroke-dasharray", Dashes(stroke.Dashes)));
                break;
            case Ring ring:
                WriteRing(xml, ring, "#000", ring.Width + (Look.HaloWidth * unit / 2), [], Look.HaloOpacity / 2);
                WriteRing(xml, ring, ring.Ink.Hex(), ring.Width, ring.Dashes, 1);
                break;
            case Words words:
                WriteWords(xml, words, unit, halo);
                break;
        }
    }

    private static void WriteRing(XmlWriter xml, Ring ring, string colour, double width, IReadOnlyList<double> dashes, double opacity) =>
        OverlaySvg.Element(xml, "ellipse", ("cx", ring.Centre.X), ("cy", ring.Centre.Y), ("rx", ring.RadiusX), ("ry", ring.RadiusY),
            ("transform", $"rotate({OverlaySvg.Number(ring.Degrees)} {OverlaySvg.Number(ring.Centre.X)} {OverlaySvg.Number(ring.Centre.Y)})"),
            ("fill", "none"), ("stroke", colour), ("stroke-opacity", opacity), ("stroke-width", width), ("stroke-dasharray", Dashes(dashes)));

    private static void WriteWords(XmlWriter xml, Words words, double unit, bool halo)
    {
        xml.WriteStartElement("text", "http://www.w3.org/2000/svg");
        xml.WriteAttributeString("x", OverlaySvg.Number(words.At.X));
        xml.WriteAttributeString("y", OverlaySvg.Number(words.At.Y));
        xml.WriteAttributeString("font-size", OverlaySvg.Number(words.Size));
        xml.WriteAttributeString("fill", words.Ink.Hex());
        if (halo)
        {
            xml.WriteAttributeString("stroke", "#000");
            xml.WriteAttributeString("stroke-opacity", OverlaySvg.Number(Look.HaloOpacity));
            xml.WriteAttributeString("stroke-width", OverlaySvg.Number(Look.HaloWidth * unit));
            xml.WriteAttributeString("stroke-linejoin", "round");
            xml.WriteAttributeString("paint-order", "stroke");
        }

        xml.WriteString(words.Text);
        xml.WriteEndElement();
    }

    private static string Path(IReadOnlyList<Point> points) =>
        "M" + string.Join('L', points.Select(p => $"{OverlaySvg.Number(p.X)} {OverlaySvg.Number(p.Y)}"));

    private static string Dashes(IReadOnlyList<double> dashes) =>
        dashes.Count == 0 ? "none" : string.Join(' ', dashes.Select(OverlaySvg.Number));
}
