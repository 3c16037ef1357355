using ElbowAssist.Exchange.Dicom.Format;

namespace ElbowAssist.Exchange.Dicom.Pixels;

/// <summary>
/// From stored words to what a display shows: Modality LUT or rescale, VOI LUT or window, then one inversion for
/// MONOCHROME1 (PS3.4 N.2). Larger output is brighter.
/// </summary>
internal sealed class GreyTransform
{
    private readonly PixelLayout layout;
    private readonly LookupTable? modalityTable;
    private readonly double slope;
    private readonly double intercept;
    private readonly LookupTable? voiTable;
    private readonly Window? window;

    public GreyTransform(DicomDataset film, PixelLayout layout)
    {
        this.layout = layout;
        modalityTable = film.Items(Tag.ModalityLutSequence) is [var modality, ..] ? LookupTable.Of(modality, layout.Signed) : null;
        slope = film.Number(Tag.RescaleSlope) is { } s and not 0 ? s : 1;
        intercept = film.Number(Tag.RescaleIntercept) ?? 0;
        var signedModality = modalityTable is null && (layout.Signed || intercept < 0);
        voiTable = film.Items(Tag.VoiLutSequence) is [var voi, ..] ? LookupTable.Of(voi, signedModality) : null;
        window = Window.Of(film);
    }

    /// <summary>Turns stored words into 16-bit brightness in place; words marked in <paramref name="excluded"/> become 0.</summary>
    public void Apply(Span<ushort> words, ReadOnlySpan<bool> excluded)
    {
        var fraction = Fraction(words, excluded);
        var table = new ushort[65536];
        for (var word = 0; word < table.Length; word++)
        {
            var y = fraction(Modality(StoredValue(layout, (ushort)word)));
            table[word] = (ushort)Math.Round((layout.Inverted ? 1 - y : y) * 65535);
        }

        for (var i = 0; i < words.Length; i++)
        {
            words[i] = !excluded.IsEmpty && excluded[i] ? (ushort)0 : table[words[i]];
        }
    }

    /// <summary>The value in a stored word: shifted down, masked, sign-extended.</summary>
    public static int StoredValue(PixelLayout layout, ushort word)
    {
        var value = (word >> layout.Shift) & ((1 << layout.BitsStored) - 1);
        return layout.Signed && (value & (1 << (layout.BitsStored - 1))) != 0 ? value - (1 << layout.BitsStored) : value;
    }

    private double Modality(int stored) => modalityTable is null ? (slope * stored) + intercept : modalityTable[stored];

    private Func<double, double> Fraction(ReadOnlySpan<ushort> words, ReadOnlySpan<bool> excluded)
    {
        if (voiTable is not null)
        {
            return voiTable.Fraction;
        }

        if (window is not null)
        {
            return window.Fraction;
        }

        var (low, high) = (double.MaxValue, double.MinValue);
        for (var i = 0; i < words.Length; i++)
        {
            if (excluded.IsEmpty || !excluded[i])
            {
                var value = Modality(StoredValue(layout, words[i]));
                (low, high) = (Math.Min(low, value), Math.Max(high, value));
            }
        }

        return high > low ? value => Math.Clamp((value - low) / (high - low), 0, 1) : _ => 0;
    }
}
