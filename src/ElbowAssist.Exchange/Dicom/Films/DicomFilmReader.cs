using ElbowAssist.Exchange.Dicom.Format;
using ElbowAssist.Exchange.Dicom.Pixels;
using ElbowAssist.Reading;

namespace ElbowAssist.Exchange.Dicom.Films;

/// <summary>Reads radiographs: Computed Radiography, Digital X-Ray for presentation and Secondary Capture. Thread-safe.</summary>
/// <param name="decoder">Decoder of JPEG baseline, JPEG 2000 and HTJ2K; without one, such files are turned away.</param>
/// <param name="limits">What a file may ask for; null for <see cref="DicomLimits.Default"/>.</param>
public sealed class DicomFilmReader(IPixelDecoder? decoder = null, DicomLimits? limits = null)
{
    private readonly DicomLimits limits = limits ?? DicomLimits.Default;

    /// <summary>True if the first bytes of a file are those of a DICOM file.</summary>
    /// <param name="start">At least the first 132 bytes.</param>
    public static bool LooksLikeDicom(ReadOnlySpan<byte> start) => DicomFile.HasPrefix(start);

    /// <summary>Reads a film.</summary>
    /// <param name="file">The whole file.</param>
    /// <exception cref="DicomFormatException">The file is damaged, beyond a limit or out of scope; the message says the way out.</exception>
    public DicomFilm Read(ReadOnlyMemory<byte> file)
    {
        var dicom = DicomFile.Parse(file, limits);
        var film = dicom.Dataset;
        CheckKind(film);
        var source = DicomSource.Of(film);
        var layout = PixelLayout.Of(film, limits);
        var pixels = StoredPixels.Read(dicom, layout, decoder);
        var excluded = ExcludedPixels.Of(film, layout, pixels);
        new GreyTransform(film, layout).Apply(pixels, excluded);

        var conflicts = new List<Reason>();
        ProjectionReader.CheckBodyPart(film, conflicts);
        CheckPolarity(film, layout, conflicts);
        return new()
        {
            Width = layout.Width,
            Height = layout.Height,
            Pixels = pixels,
            Excluded = excluded,
            Spacing = SpacingReader.Read(film, conflicts),
            Patient = PatientReader.Read(film, conflicts),
            Side = ProjectionReader.Side(film, conflicts),
            ViewHint = ProjectionReader.View(film, conflicts),
            LossyCompressed = film.Text(Tag.LossyImageCompression) == "01" || dicom.Syntax.Coding == PixelCoding.JpegBaseline,
            MayShowIdentity = film.Text(Tag.BurnedInAnnotation) != "NO",
            Conflicts = conflicts,
            Source = source,
        };
    }

    private static void CheckKind(DicomDataset film)
    {
        var kind = film.Text(Tag.SopClassUid);
        if (kind == Uids.DigitalXRayForProcessing || film.Text(Tag.PresentationIntentType) == "FOR PROCESSING")
        {
            throw new DicomFormatException("The film is meant FOR PROCESSING and looks different on a display; give the FOR PRESENTATION image of the same exposure.");
        }

        if (kind is not (Uids.ComputedRadiography or Uids.DigitalXRayForPresentation or Uids.SecondaryCapture))
        {
            throw DicomFormatException.Because($"The file holds SOP class {Uids.ForMessage(kind)}, not a radiograph; give a CR, DX for presentation or secondary capture image.");
        }
    }

    /// <summary>DX states the polarity twice (PS3.3 C.8.11.3.1.2); the photometric interpretation is followed.</summary>
    private static void CheckPolarity(DicomDataset film, PixelLayout layout, List<Reason> conflicts)
    {
        if (film.Text(Tag.PresentationLutShape) is { } shape && (shape == "INVERSE") != layout.Inverted)
        {
            conflicts.Add(new Reason("polarity-contradicted", "The file states its polarity in two ways that contradict each other; the photometric interpretation was followed."));
        }
    }
}
