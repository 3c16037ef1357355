using System.Globalization;
using System.Text;
using System.Xml;
using ElbowAssist.Drawing.Marks;
using ElbowAssist.Drawing.Overlay;
using ElbowAssist.Drawing.Png;
using ElbowAssist.Reading;

namespace ElbowAssist.Drawing;

/// <summary>
/// A reading as an SVG overlay. The viewBox is <c>0 0 width height</c> of the film, so the file lies over the film of any
/// viewer as it is. The words beside the film stand outside the viewBox: opened on its own in a browser they show in the
/// room that the film leaves, laid over a film they stay away.
/// </summary>
public static class OverlaySvg
{
    private const string Namespace = "http://www.w3.org/2000/svg";

    // A film of this size shows its lines well on a screen and stays below half a megabyte as JPEG.
    private const int LongestEmbeddedSide = 1200;

    /// <summary>The overlay as UTF-8 text.</summary>
    public static byte[] Write(FilmReading reading, OverlayOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(reading);
        options ??= OverlayOptions.Default;
        var scene = OverlayScene.Of(reading, options);
        using var buffer = new MemoryStream();
        var settings = new XmlWriterSettings
        {
            Encoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false),
            Indent = true,
            NewLineChars = "\n",
        };
        using (var xml = XmlWriter.Create(buffer, settings))
        {
            Write(xml, scene, reading, options);
        }

        buffer.WriteByte((byte)'\n');
        return buffer.ToArray();
    }

    private static void Write(XmlWriter xml, OverlayScene scene, FilmReading reading, OverlayOptions options)
    {
        var (width, height) = (scene.Scale.Width, scene.Scale.Height);
        xml.WriteStartElement("svg", Namespace);
        xml.WriteAttributeString("viewBox", string.Create(CultureInfo.InvariantCulture, $"0 0 {width} {height}"));
        xml.WriteAttributeString("preserveAspectRatio", scene.Legend is null ? "xMidYMid meet" : "xMinYMin meet");
        xml.WriteAttributeString("font-family", "DejaVu Sans, Verdana, sans-serif");
        xml.WriteElementString("title", Namespace, "Lines laid on an elbow radiograph for a second look");
        xml.WriteElementString("desc", Namespace, reading.CautionText);
        if (scene.Legend is not null)
        {
            // Where the window is too narrow for words beside the film, they go below it.
            xml.WriteElementString("style", Namespace, string.Create(CultureInfo.InvariantCulture,
                $"#legend{{transform:translate({width}px,0)}}@media (max-aspect-ratio:{width}/{height}){{#legend{{transform:translate(0,{height}px)}}}}"));
        }

        if (options.Film is { } film)
        {
            // Only where a film hides the ground anyway: an overlay laid over another picture stays open.
            xml.WriteElementString("style", Namespace, ":root{background:#15181B}");
            Element(xml, "image", ("id", "film"), ("x", "0"), ("y", "0"), ("width", width), ("height", height), ("preserveAspectRatio", "none"),
                ("href", "data:image/jpeg;base64," + Convert.ToBase64String(FilmEncoder.Jpeg(film, LongestEmbeddedSide))));
        }

        xml.WriteStartElement("g", Namespace);
        xml.WriteAttributeString("id", "overlay");
        foreach (var group in scene.OnFilm.Where(g => g.Marks.Count > 0))
        {
            SvgMarks.WriteGroup(xml, group, scene.Scale.Unit, halo: true);
        }

        xml.WriteEndElement();
        if (scene.Legend is { } legend)
        {
            xml.WriteStartElement("g", Namespace);
            xml.WriteAttributeString("id", "legend");
            xml.WriteAttributeString("transform", string.Create(CultureInfo.InvariantCulture, $"translate({width} 0)"));
            Element(xml, "rect", ("width", legend.Width), ("height", Math.Max(legend.Height, height)), ("fill", "#15181B"));
            SvgMarks.WriteGroup(xml, new MarkGroup("words", null, null, legend.Marks), scene.Scale.Unit, halo: false);
            xml.WriteEndElement();
        }

        xml.WriteEndElement();
    }

    internal static void Element(XmlWriter xml, string name, params ReadOnlySpan<(string Name, object Value)> attributes)
    {
        xml.WriteStartElement(name, Namespace);
        foreach (var (attribute, value) in attributes)
        {
            xml.WriteAttributeString(attribute, value is double number ? Number(number) : Convert.ToString(value, CultureInfo.InvariantCulture));
        }

        xml.WriteEndElement();
    }

    /// <summary>A number to a hundredth of a pixel.</summary>
    internal static string Number(double value) =>
        (Math.Round(value, 2) + 0.0).ToString("0.##", CultureInfo.InvariantCulture);
}
