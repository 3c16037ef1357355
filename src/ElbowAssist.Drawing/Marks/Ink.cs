namespace ElbowAssist.Drawing.Marks;

/// <summary>
/// The inks of an overlay. Yellow and sky blue are the pair of that name in the palette of Okabe and Ito ("Color Universal
/// Design", 2008), told apart with every common colour vision. Colour says who laid it and nothing else.
/// </summary>
internal enum Ink
{
    Reader,
    Tool,
    Words,
    Faint,
}

internal static class Inks
{
    /// <summary>The colour as red, green, blue.</summary>
    public static (byte R, byte G, byte B) Colour(this Ink ink) => ink switch
    {
        Ink.Reader => (0xF0, 0xE4, 0x42),
        Ink.Tool => (0x56, 0xB4, 0xE9),
        Ink.Words => (0xEC, 0xEC, 0xEC),
        _ => (0xA8, 0xA8, 0xA8),
    };

    public static string Hex(this Ink ink)
    {
        var (r, g, b) = ink.Colour();
        return $"#{r:X2}{g:X2}{b:X2}";
    }
}
