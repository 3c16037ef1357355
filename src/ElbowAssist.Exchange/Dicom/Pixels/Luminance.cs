namespace ElbowAssist.Exchange.Dicom.Pixels;

/// <summary>Grey out of the colours of a secondary capture; luma weights of ITU-R BT.601, as in PS3.3 C.7.6.3.1.2.</summary>
internal static class Luminance
{
    public static void Of(ReadOnlySpan<byte> bytes, PixelLayout layout, Span<ushort> values)
    {
        var (pixel, sample) = layout.Planar ? (1, values.Length) : (3, 1);
        var isRgb = layout.Photometric == "RGB";
        for (var i = 0; i < values.Length; i++)
        {
            // YBR_FULL_422 holds Y Y Cb Cr for every two pixels.
            values[i] = layout.Photometric == "YBR_FULL_422" ? bytes[(i / 2 * 4) + (i % 2)]
                : isRgb ? Weighted(bytes[i * pixel], bytes[(i * pixel) + sample], bytes[(i * pixel) + (2 * sample)])
                : bytes[i * pixel];
        }
    }

    private static ushort Weighted(byte red, byte green, byte blue) =>
        (ushort)((0.299 * red) + (0.587 * green) + (0.114 * blue) + 0.5);
}
