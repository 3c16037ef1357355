using System.Globalization;
using System.Text;
using ElbowAssist.Geometry;

namespace ElbowAssist.Bench.Reports;

/// <summary>A film with the reference and what an entrant laid, for the eye.</summary>
/// <param name="Title">Which film and why it is shown.</param>
/// <param name="Caption">What is to be known of it.</param>
/// <param name="Width">Columns of the film.</param>
/// <param name="Height">Rows of the film.</param>
/// <param name="Jpeg">The film as a JPEG file, perhaps smaller than itself.</param>
/// <param name="Reference">Places of the reference, film pixels: solid yellow.</param>
/// <param name="Laid">Places an entrant laid, film pixels, each with its reference if there is one: dashed sky blue.</param>
public sealed record FilmFigure(
    string Title, string Caption, int Width, int Height, byte[] Jpeg, IReadOnlyList<Point> Reference, IReadOnlyList<(Point Place, Point? Reference)> Laid)
{
    // The inks of the films' overlays: who laid it, and nothing else.
    private const string ReaderInk = "#F0E442", ToolInk = "#56B4E9", Halo = "#15181B";

    internal string ToHtml()
    {
        var r = Math.Max(Width, Height) / 90.0;
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"<figure><svg viewBox=\"0 0 {Width} {Height}\" role=\"img\"><title>{Html.Text(Title)}</title><image href=\"data:image/jpeg;base64,{Convert.ToBase64String(Jpeg)}\" width=\"{Width}\" height=\"{Height}\" preserveAspectRatio=\"none\"/>");
        foreach (var (place, reference) in Laid)
        {
            if (reference is { } from)
            {
                Line(text, from, place, Halo, r * 0.5);
                Line(text, from, place, ToolInk, r * 0.25);
            }

            Circle(text, place, r, ToolInk, string.Create(CultureInfo.InvariantCulture, $" stroke-dasharray=\"{r * 0.9:0.##} {r * 0.6:0.##}\""));
        }

        foreach (var place in Reference)
        {
            Circle(text, place, r * 0.45, ReaderInk, "");
        }

        return text.Append("</svg><figcaption><b>").Append(Html.Text(Title)).Append("</b> ").Append(Html.Text(Caption)).Append("</figcaption></figure>\n").ToString();
    }

    private static void Line(StringBuilder text, Point from, Point to, string ink, double width) =>
        text.Append(CultureInfo.InvariantCulture, $"<line x1=\"{from.X:0.#}\" y1=\"{from.Y:0.#}\" x2=\"{to.X:0.#}\" y2=\"{to.Y:0.#}\" stroke=\"{ink}\" stroke-width=\"{width:0.##}\"/>");

    private static void Circle(StringBuilder text, Point at, double r, string ink, string dashes) =>
        text.Append(CultureInfo.InvariantCulture, $"<circle cx=\"{at.X:0.#}\" cy=\"{at.Y:0.#}\" r=\"{r:0.##}\" fill=\"none\" stroke=\"{Halo}\" stroke-width=\"{r * 0.7:0.##}\"/><circle cx=\"{at.X:0.#}\" cy=\"{at.Y:0.#}\" r=\"{r:0.##}\" fill=\"none\" stroke=\"{ink}\" stroke-width=\"{r * 0.35:0.##}\"{dashes}/>");
}
