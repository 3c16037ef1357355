namespace ElbowAssist.Phantom.Exposure.Annotations;

/// <summary>
/// A font of straight strokes on a grid four wide and six high, y down from the top of a capital. Each glyph is a list
/// of strokes <c>x1 y1 x2 y2</c>, one digit each.
/// </summary>
public static class StrokeFont
{
    /// <summary>Height of a capital in grid units.</summary>
    public const double CapHeight = 6;

    private const double Advance = 5.6;

    private static readonly Dictionary<char, string> Glyphs = new()
    {
        ['A'] = "0620 2046 1434",
        ['B'] = "0006 0030 3041 4132 3203 3244 4435 3506 0003",
        ['C'] = "4130 3010 1001 0105 0516 1636 3645",
        ['D'] = "0006 0030 3042 4244 4436 3606",
        ['E'] = "0006 0040 0333 0646",
        ['F'] = "0006 0040 0333",
        ['G'] = "4130 3010 1001 0105 0516 1636 3644 4424",
        ['H'] = "0006 4046 0343",
        ['I'] = "2026",
        ['K'] = "0006 4003 0346",
        ['L'] = "0006 0646",
        ['M'] = "0600 0023 2340 4046",
        ['N'] = "0600 0046 4640",
        ['O'] = "1001 0105 0516 1636 3645 4541 4130 3010",
        ['P'] = "0006 0030 3041 4142 4233 3303",
        ['R'] = "0006 0030 3041 4142 4233 3303 2346",
        ['S'] = "4130 3010 1001 0102 0213 1333 3344 4445 4536 3616 1605",
        ['T'] = "0040 2026",
        ['U'] = "0005 0516 1636 3645 4540",
        ['V'] = "0026 2640",
        ['W'] = "0016 1623 2336 3640",
        ['X'] = "0046 4006",
        ['Y'] = "0023 4023 2326",
        ['0'] = "1001 0105 0516 1636 3645 4541 4130 3010 1531",
        ['1'] = "1120 2026 1636",
        ['2'] = "0110 1030 3041 4142 4206 0646",
        ['3'] = "0110 1030 3041 4142 4233 3313 3344 4445 4536 3616 1605",
        ['4'] = "3036 3004 0444",
        ['5'] = "4000 0003 0333 3344 4445 4536 3606",
        ['6'] = "4010 1002 0205 0516 1636 3645 4544 4433 3303",
        ['7'] = "0040 4016",
        ['8'] = "1030 3041 4142 4233 3313 1302 0201 0110 3344 4445 4536 3616 1605 0504 0413",
        ['9'] = "0636 3644 4441 4130 3010 1001 0102 0213 1343",
        ['-'] = "1333",
        ['/'] = "0640",
        ['.'] = "2526",
        [':'] = "2122 2425",
        ['+'] = "0343 2125",
        ['|'] = "2026",
        ['>'] = "0343 4321 4325",
        ['°'] = "1001 0103 0314 1434 3443 4341 4130 3010",
        ['*'] = "2026 0145 0541",
        [' '] = "",
    };

    /// <summary>Characters that can be drawn.</summary>
    public static IReadOnlyCollection<char> Characters => Glyphs.Keys;

    /// <summary>Strokes of a text in units of the cap height, centred on (0,0), y down.</summary>
    /// <exception cref="ArgumentException">The font lacks a character.</exception>
    public static IReadOnlyList<Stroke> Lay(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var strokes = new List<Stroke>();
        var width = (text.Length * Advance) - (Advance - 4);
        for (var i = 0; i < text.Length; i++)
        {
            if (!Glyphs.TryGetValue(text[i], out var glyph))
            {
                throw new ArgumentException($"The stroke font has no '{text[i]}'.", nameof(text));
            }

            var left = (i * Advance) - (width / 2);
            strokes.AddRange(glyph.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(s => new Stroke(
                (left + s[0] - '0') / CapHeight,
                (s[1] - '0' - 3) / CapHeight,
                (left + s[2] - '0') / CapHeight,
                (s[3] - '0' - 3) / CapHeight)));
        }

        return strokes;
    }
}

/// <summary>A straight stroke from (X1, Y1) to (X2, Y2).</summary>
public readonly record struct Stroke(double X1, double Y1, double X2, double Y2);
