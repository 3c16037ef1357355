using System.Globalization;
using System.Text;

namespace ElbowAssist.Bench.Reports;

/// <summary>One curve of a plot.</summary>
/// <param name="Name">Name in the legend.</param>
/// <param name="Points">Points in order.</param>
/// <param name="Joined">Whether the points are joined by a line.</param>
internal sealed record Curve(string Name, IReadOnlyList<(double X, double Y)> Points, bool Joined = true);

/// <summary>
/// Curves in a frame with axes, as SVG that needs nothing else. Curves are told apart by dashes and marks, not by colour.
/// </summary>
/// <param name="Title">What is shown.</param>
/// <param name="XTitle">Title of the horizontal axis, with its unit.</param>
/// <param name="YTitle">Title of the vertical axis, with its unit.</param>
/// <param name="Curves">Curves.</param>
internal sealed record LinePlot(string Title, string XTitle, string YTitle, IReadOnlyList<Curve> Curves)
{
    private const double Width = 460, Height = 300, Left = 62, Right = 14, Top = 26, Bottom = 46;
    private static readonly string[] Dashes = ["", "7 4", "2 3", "10 3 2 3", "1 5", "14 4"];

    /// <summary>Levels to draw across, with their names.</summary>
    public IReadOnlyList<(double Y, string Name)> Levels { get; init; } = [];

    /// <summary>Range of both axes where it does not follow from the points.</summary>
    public (double Low, double High)? XRange { get; init; }

    /// <summary>Range of the vertical axis.</summary>
    public (double Low, double High)? YRange { get; init; }

    /// <summary>Whether the line of equal values is drawn.</summary>
    public bool Diagonal { get; init; }

    public string ToSvg()
    {
        var points = Curves.SelectMany(c => c.Points).ToList();
        if (points.Count == 0)
        {
            return "";
        }

        var x = Axis.Over(XRange, points.Select(p => p.X));
        var y = Axis.Over(YRange, points.Select(p => p.Y).Concat(Levels.Select(l => l.Y)));
        var text = new StringBuilder();
        var legend = Height + (16 * Math.Ceiling(Curves.Count / 2.0));
        text.Append(CultureInfo.InvariantCulture, $"<svg class=\"plot\" viewBox=\"0 0 {Width} {legend}\" role=\"img\"><title>{Html.Text(Title)}</title>");
        text.Append(CultureInfo.InvariantCulture, $"<text x=\"{Left}\" y=\"14\" class=\"head\">{Html.Text(Title)}</text>");
        Frame(text, x, y);
        for (var i = 0; i < Curves.Count; i++)
        {
            Draw(text, Curves[i], i, x, y);
            var (legendX, legendY) = (Left + ((i % 2) * 200), Height + 4 + (16 * (i / 2)));
            _ = Curves[i].Joined
                ? text.Append(CultureInfo.InvariantCulture, $"<line x1=\"{legendX}\" y1=\"{legendY}\" x2=\"{legendX + 34}\" y2=\"{legendY}\" class=\"curve\" stroke-dasharray=\"{Dashes[i % Dashes.Length]}\"/>")
                : text.Append(CultureInfo.InvariantCulture, $"<circle cx=\"{legendX + 30}\" cy=\"{legendY}\" r=\"2\" class=\"dot\"/>");
            text.Append(CultureInfo.InvariantCulture, $"<text x=\"{legendX + 40}\" y=\"{legendY + 4}\">{Html.Text(Curves[i].Name)}</text>");
        }

        return text.Append("</svg>\n").ToString();
    }

    private void Frame(StringBuilder text, Axis x, Axis y)
    {
        foreach (var tick in x.Ticks)
        {
            var at = ToX(x, tick);
            text.Append(CultureInfo.InvariantCulture, $"<line x1=\"{at:0.#}\" y1=\"{Top}\" x2=\"{at:0.#}\" y2=\"{Height - Bottom}\" class=\"grid\"/><text x=\"{at:0.#}\" y=\"{Height - Bottom + 14}\" text-anchor=\"middle\">{tick:0.###}</text>");
        }

        foreach (var tick in y.Ticks)
        {
            var at = ToY(y, tick);
            text.Append(CultureInfo.InvariantCulture, $"<line x1=\"{Left}\" y1=\"{at:0.#}\" x2=\"{Width - Right}\" y2=\"{at:0.#}\" class=\"grid\"/><text x=\"{Left - 6}\" y=\"{at + 4:0.#}\" text-anchor=\"end\">{tick:0.###}</text>");
        }

        foreach (var (level, name) in Levels)
        {
            var at = ToY(y, level);
            text.Append(CultureInfo.InvariantCulture, $"<line x1=\"{Left}\" y1=\"{at:0.#}\" x2=\"{Width - Right}\" y2=\"{at:0.#}\" class=\"level\"/><text x=\"{Width - Right - 2}\" y=\"{at - 3:0.#}\" text-anchor=\"end\">{Html.Text(name)}</text>");
        }

        if (Diagonal)
        {
            var (low, high) = (Math.Max(x.Low, y.Low), Math.Min(x.High, y.High));
            text.Append(CultureInfo.InvariantCulture, $"<line x1=\"{ToX(x, low):0.#}\" y1=\"{ToY(y, low):0.#}\" x2=\"{ToX(x, high):0.#}\" y2=\"{ToY(y, high):0.#}\" class=\"level\"/>");
        }

        text.Append(CultureInfo.InvariantCulture, $"<text x=\"{(Left + Width - Right) / 2}\" y=\"{Height - 14}\" text-anchor=\"middle\">{Html.Text(XTitle)}</text>");
        text.Append(CultureInfo.InvariantCulture, $"<text x=\"14\" y=\"{(Top + Height - Bottom) / 2}\" text-anchor=\"middle\" transform=\"rotate(-90 14 {(Top + Height - Bottom) / 2})\">{Html.Text(YTitle)}</text>");
    }

    private static void Draw(StringBuilder text, Curve curve, int index, Axis x, Axis y)
    {
        if (curve.Joined)
        {
            var path = string.Join(' ', curve.Points.Select(p => string.Create(CultureInfo.InvariantCulture, $"{ToX(x, p.X):0.#},{ToY(y, p.Y):0.#}")));
            text.Append(CultureInfo.InvariantCulture, $"<polyline points=\"{path}\" class=\"curve\" stroke-dasharray=\"{Dashes[index % Dashes.Length]}\"/>");
            return;
        }

        foreach (var p in curve.Points)
        {
            text.Append(CultureInfo.InvariantCulture, $"<circle cx=\"{ToX(x, p.X):0.#}\" cy=\"{ToY(y, p.Y):0.#}\" r=\"2\" class=\"dot\"/>");
        }
    }

    private static double ToX(Axis axis, double value) => Left + ((Math.Clamp(value, axis.Low, axis.High) - axis.Low) / (axis.High - axis.Low) * (Width - Left - Right));

    private static double ToY(Axis axis, double value) => Height - Bottom - ((Math.Clamp(value, axis.Low, axis.High) - axis.Low) / (axis.High - axis.Low) * (Height - Top - Bottom));
}
