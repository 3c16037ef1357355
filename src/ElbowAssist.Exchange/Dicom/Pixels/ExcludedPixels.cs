using ElbowAssist.Exchange.Dicom.Format;

namespace ElbowAssist.Exchange.Dicom.Pixels;

/// <summary>Pixels that are no part of the film: padding (PS3.3 C.7.5.1.1.2) and what a display shutter covers (C.7.6.11).</summary>
internal static class ExcludedPixels
{
    /// <summary>One flag per pixel, or an empty array if nothing is excluded.</summary>
    public static bool[] Of(DicomDataset film, PixelLayout layout, ReadOnlySpan<ushort> words)
    {
        var excluded = Array.Empty<bool>();
        if (Padding(film, layout) is var (low, high))
        {
            excluded = new bool[layout.PixelCount];
            for (var i = 0; i < words.Length; i++)
            {
                var value = GreyTransform.StoredValue(layout, words[i]);
                excluded[i] = value >= low && value <= high;
            }
        }

        foreach (var shape in film.Texts(Tag.ShutterShape).Distinct())
        {
            if (ShutterShape.Of(shape, film) is { } shutter)
            {
                excluded = excluded.Length > 0 ? excluded : new bool[layout.PixelCount];
                shutter.Cover(excluded, layout.Width, layout.Height);
            }
        }

        return excluded;
    }

    private static (int Low, int High)? Padding(DicomDataset film, PixelLayout layout)
    {
        if (Word(film, Tag.PixelPaddingValue, layout) is not { } value)
        {
            return null;
        }

        var limit = Word(film, Tag.PixelPaddingRangeLimit, layout) ?? value;
        return (Math.Min(value, limit), Math.Max(value, limit));
    }

    private static int? Word(DicomDataset film, Tag tag, PixelLayout layout) =>
        film.Integer(tag) is { } number and >= short.MinValue and <= ushort.MaxValue
            ? layout.Signed ? (short)(ushort)(number & 0xFFFF) : number & 0xFFFF
            : null;
}
