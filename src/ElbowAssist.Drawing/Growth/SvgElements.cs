using System.Globalization;
using System.Xml.Linq;

namespace ElbowAssist.Drawing.Growth;

/// <summary>Elements of a small drawing.</summary>
internal static class SvgElements
{
    public static readonly XNamespace Namespace = "http://www.w3.org/2000/svg";

    public static XElement Element(string name, params object[] content) => new(Namespace + name, content);

    public static XAttribute At(string name, double value) => new(name, value.ToString("0.##", CultureInfo.InvariantCulture));

    public static XAttribute At(string name, string value) => new(name, value);

    public static XElement Text(double x, double y, string words, double size = 11, string anchor = "start", bool bold = false)
    {
        var text = Element("text", At("x", x), At("y", y), At("font-size", size), At("text-anchor", anchor), words);
        if (bold)
        {
            text.Add(At("font-weight", "bold"));
        }

        return text;
    }

    public static XElement Line(double x1, double y1, double x2, double y2, double width = 1, string? dash = null, string ink = "#222")
    {
        var line = Element("line", At("x1", x1), At("y1", y1), At("x2", x2), At("y2", y2), At("stroke", ink), At("stroke-width", width));
        if (dash is not null)
        {
            line.Add(At("stroke-dasharray", dash));
        }

        return line;
    }

    public static XElement Rect(double x, double y, double width, double height, string fill, string stroke = "#222") =>
        Element("rect", At("x", x), At("y", y), At("width", width), At("height", height), At("fill", fill), At("stroke", stroke), At("stroke-width", 0.8));

    public static XElement Path(string d, string fill = "none", double width = 1.2, string? dash = null)
    {
        var path = Element("path", At("d", d), At("fill", fill), At("stroke", "#222"), At("stroke-width", width), At("stroke-linejoin", "round"));
        if (dash is not null)
        {
            path.Add(At("stroke-dasharray", dash));
        }

        return path;
    }
}
