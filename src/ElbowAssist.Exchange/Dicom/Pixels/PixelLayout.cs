using ElbowAssist.Exchange.Dicom.Format;

namespace ElbowAssist.Exchange.Dicom.Pixels;

/// <summary>How the pixels of a film are laid down (PS3.3 C.7.6.3), checked.</summary>
/// <param name="Width">Columns.</param>
/// <param name="Height">Rows.</param>
/// <param name="BitsAllocated">8 or 16.</param>
/// <param name="BitsStored">Bits that carry the value.</param>
/// <param name="Shift">Number of bits below the value.</param>
/// <param name="Signed">Two's complement.</param>
/// <param name="Samples">1 (grey) or 3 (colour, 8 bits).</param>
/// <param name="Planar">Colour planes one after the other.</param>
/// <param name="Photometric">Photometric interpretation.</param>
internal sealed record PixelLayout(
    int Width, int Height, int BitsAllocated, int BitsStored, int Shift, bool Signed, int Samples, bool Planar, string Photometric)
{
    private const string ExportGrey = "export the film as a grey single-frame image (CR, DX for presentation or secondary capture)";

    public int PixelCount => Width * Height;

    public bool Inverted => Photometric == "MONOCHROME1";

    /// <summary>Bytes of one uncompressed frame.</summary>
    public int FrameBytes => checked(PixelCount * Samples * (BitsAllocated / 8));

    /// <exception cref="DicomFormatException">Missing, contradictory, out of scope or beyond a limit.</exception>
    public static PixelLayout Of(DicomDataset film, DicomLimits limits)
    {
        var height = Required(film, Tag.Rows, "rows");
        var width = Required(film, Tag.Columns, "columns");
        if (width < 1 || height < 1)
        {
            throw new DicomFormatException("The film has no rows or no columns.");
        }

        if ((long)width * height > limits.MaxPixels)
        {
            throw DicomFormatException.Because($"The film has {width} x {height} pixels, more than the limit of {limits.MaxPixels}.");
        }

        CheckFrames(film);
        var samples = film.Integer(Tag.SamplesPerPixel) ?? 1;
        var photometric = CheckPhotometric(film, samples);
        var allocated = Required(film, Tag.BitsAllocated, "allocated bits");
        var stored = Required(film, Tag.BitsStored, "stored bits");
        var highBit = film.Integer(Tag.HighBit) ?? (stored - 1);
        if (allocated is not (8 or 16) || (samples == 3 && allocated != 8))
        {
            throw DicomFormatException.Because($"The film has {allocated} bits per sample; {ExportGrey} with 8 or 16.");
        }

        if (stored < 1 || stored > allocated || highBit < stored - 1 || highBit >= allocated)
        {
            throw DicomFormatException.Damaged($"its bits stored, bits allocated and high bit contradict each other");
        }

        var layout = new PixelLayout(
            width, height, allocated, stored, highBit + 1 - stored, film.Integer(Tag.PixelRepresentation) == 1, samples,
            film.Integer(Tag.PlanarConfiguration) == 1, photometric);
        return (long)layout.PixelCount * samples * (allocated / 8) > int.MaxValue
            ? throw DicomFormatException.Because($"The film has {width} x {height} pixels, more than can be read.")
            : layout;
    }

    private static void CheckFrames(DicomDataset film)
    {
        var frames = film.Integer(Tag.NumberOfFrames) ?? 1;
        if (frames != 1)
        {
            throw DicomFormatException.Because($"The file holds {frames} frames and does not say which is the film; export one frame as a single image.");
        }
    }

    private static string CheckPhotometric(DicomDataset film, int samples)
    {
        var photometric = film.Text(Tag.PhotometricInterpretation) ?? "";
        return (photometric, samples) switch
        {
            ("MONOCHROME1" or "MONOCHROME2", 1) => photometric,
            ("RGB" or "YBR_FULL" or "YBR_FULL_422" or "YBR_ICT" or "YBR_RCT", 3) => photometric,
            ("PALETTE COLOR", _) => throw DicomFormatException.Because($"The file uses a colour palette; {ExportGrey}."),
            _ => throw DicomFormatException.Because($"The file's photometric interpretation and number of samples ({samples}) are not those of a radiograph; {ExportGrey}."),
        };
    }

    private static int Required(DicomDataset film, Tag tag, string what) => film.Integer(tag) ??
        throw DicomFormatException.Because($"The file holds no usable image: its {what} are missing; {ExportGrey}.");
}
