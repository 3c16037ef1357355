using System.Globalization;
using System.Xml.Linq;
using ElbowAssist.Anatomy.Rules;
using static ElbowAssist.Drawing.Growth.SvgElements;

namespace ElbowAssist.Drawing.Growth;

/// <summary>
/// Where the medial epicondyle lies when in its place, on AP and lateral, as a sketch: 0.5 mm (SD 2.0) below the lower
/// edge of the olecranon fossa on AP, 1.2 mm (SD 1.2) in front of the posterior humeral line on the lateral
/// (<see cref="Publications.Klatt"/>, 171 children of 4 to 15 years). Not to scale.
/// </summary>
internal static class MissingEpicondyle
{
    public const double Height = 150;

    public static XElement Drawing(double y) => Element("g",
        At("transform", string.Create(CultureInfo.InvariantCulture, $"translate(0 {y})")),
        Ap(),
        Lateral(),
        Text(330, 24, "Place of the medial epicondyle (not to scale)", 11.5, "start", bold: true),
        Text(330, 44, "AP: its centre lies 0.5 mm (SD 2.0) below the lower edge", 10.5),
        Text(330, 58, "of the olecranon fossa.", 10.5),
        Text(330, 76, "Lateral: 1.2 mm (SD 1.2) in front of the posterior humeral line.", 10.5),
        Text(330, 94, "If it is not there though expected, look for it in the joint.", 10.5),
        Text(330, 116, "171 children of 4 to 15 years, " + Publications.Klatt.Citation, 8.5));

    private static IEnumerable<XElement> Ap()
    {
        yield return Text(30, 12, "AP", 10);
        yield return Text(134, 12, "medial", 9, "middle");
        yield return Path("M62 8 C62 40 58 54 34 72 C28 78 30 86 36 90 L46 94 C56 98 66 96 78 92 C92 88 102 98 112 96 C120 94 122 86 118 78 C112 62 98 44 98 8");
        yield return Path("M66 62 C70 52 92 52 96 62 C96 72 90 78 81 78 C72 78 66 72 66 62 Z", "none", 0.9, "3 2");
        yield return Line(50, 78, 146, 78, 0.8, "4 3", "#666");
        yield return Element("ellipse", At("cx", 128), At("cy", 80), At("rx", 8), At("ry", 11), At("fill", "url(#appears)"), At("stroke", "#222"), At("stroke-width", 1.4));
        yield return Line(150, 40, 132, 66, 0.8);
        yield return Text(152, 38, "here", 10);
    }

    private static IEnumerable<XElement> Lateral()
    {
        yield return Text(196, 12, "Lateral", 10);
        yield return Path("M216 20 C216 56 214 62 210 76 C204 84 200 96 208 106 C218 118 238 112 242 98 C246 88 248 82 250 70 C252 56 250 44 250 20");
        yield return Line(250, 14, 250, 124, 0.8, "4 3", "#666");
        yield return Element("ellipse", At("cx", 243), At("cy", 82), At("rx", 6), At("ry", 10), At("fill", "url(#appears)"), At("stroke", "#222"), At("stroke-width", 1.4));
        yield return Line(270, 60, 250, 76, 0.8);
        yield return Text(272, 60, "here", 10);
        yield return Text(254, 122, "posterior", 9);
    }
}
