using ElbowAssist.Geometry;

namespace ElbowAssist.Drawing.Marks;

/// <summary>One thing drawn, in pixels of the original image.</summary>
internal abstract record Mark;

/// <summary>An open line through points.</summary>
/// <param name="Points">At least two.</param>
/// <param name="Ink">Who laid it.</param>
/// <param name="Width">Width of the line.</param>
/// <param name="Dashes">Lengths drawn and left out in turn; empty for a solid line.</param>
internal sealed record Stroke(IReadOnlyList<Point> Points, Ink Ink, double Width, IReadOnlyList<double> Dashes) : Mark;

/// <summary>A closed, faintly filled surface.</summary>
internal sealed record Band(IReadOnlyList<Point> Points, Ink Ink) : Mark;

/// <summary>An unfilled ellipse; the angle, in degrees, turns x toward y.</summary>
internal sealed record Ring(Point Centre, double RadiusX, double RadiusY, double Degrees, Ink Ink, double Width, IReadOnlyList<double> Dashes) : Mark;

/// <summary>Words on a baseline that starts at a point.</summary>
internal sealed record Words(Point At, string Text, double Size, Ink Ink) : Mark
{
    // DejaVu Sans runs to some 0.55 of its size per letter, and viewers may take another font.
    private const double WidthPerLetter = 0.58;

    public static double WidthOf(string text, double size) => text.Length * size * WidthPerLetter;
}

/// <summary>Marks that belong together, with what they stand for.</summary>
/// <param name="Kind">Kind of the group, e.g. <c>line</c>.</param>
/// <param name="Name">Name in the reading, or null.</param>
/// <param name="State">State word of the measurement served, or null.</param>
/// <param name="Marks">What is drawn.</param>
internal sealed record MarkGroup(string Kind, string? Name, string? State, IReadOnlyList<Mark> Marks);
