using System.Security.Cryptography;
using ElbowAssist.Exchange;
using ElbowAssist.Exchange.Dicom.Films;
using ElbowAssist.Exchange.Dicom.Format;
using ElbowAssist.Exchange.Dicom.Pixels;
using ElbowAssist.Exchange.Json.Facts;
using ElbowAssist.Imaging;
using ElbowAssist.Imaging.Files;

namespace ElbowAssist.Cli.Films;

/// <summary>Films that come as DICOM files.</summary>
internal static class DicomFiles
{
    private const int PrefixBytes = 132;

    private static readonly DicomFilmReader Reader = new(new NativeCodestreams());

    /// <summary>The film of a DICOM file; null for a file of another kind, or one that cannot be opened.</summary>
    /// <exception cref="UnreadableFilmException">A DICOM file that cannot be used.</exception>
    public static (DicomFilm Film, Radiograph Radiograph)? ReadIfDicom(string path)
    {
        if (!StartsAsDicom(path))
        {
            return null;
        }

        var name = Path.GetFileName(path);
        try
        {
            if (new FileInfo(path).Length > DicomLimits.Default.MaxBytes)
            {
                throw new UnreadableFilmException(name, "is larger than 256 MiB; export a single film.");
            }

            return DecodeIfDicom(File.ReadAllBytes(path), name);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new UnreadableFilmException(name, "cannot be opened; check that it may be read and is not in use.", e);
        }
    }

    /// <summary>The film of the bytes of a DICOM file; null for bytes of another kind.</summary>
    /// <exception cref="UnreadableFilmException">A DICOM file that cannot be used.</exception>
    public static (DicomFilm Film, Radiograph Radiograph)? DecodeIfDicom(ReadOnlyMemory<byte> file, string name)
    {
        if (file.Length < PrefixBytes || !DicomFilmReader.LooksLikeDicom(file.Span))
        {
            return null;
        }

        try
        {
            var film = Reader.Read(file);
            return (film, Radiograph.FromPixels(film.Pixels.Span, film.Width, film.Height, new RadiographFacts
            {
                FileName = name,
                Sha256 = Convert.ToHexStringLower(SHA256.HashData(file.Span)),
                Format = FilmFormat.Pixels,
                BitDepth = 16,
            }));
        }
        catch (DicomFormatException e)
        {
            throw new UnreadableFilmException(name, $"cannot be used: {e.Message}", e);
        }
    }

    /// <summary>What a header says of the film. The view is left out: it is a hint only, the image decides.</summary>
    public static FilmFacts Facts(DicomFilm film) => new("DICOM header")
    {
        // Millimetres of the detector plane are magnified by an unknown factor: they are none of the patient.
        RowSpacingMm = film.Spacing.InPatientPlane ? film.Spacing.RowMm : null,
        ColumnSpacingMm = film.Spacing.InPatientPlane ? film.Spacing.ColumnMm : null,
        SpacingNote = film.Spacing.Source,
        AgeMonths = film.Patient.AgeMonths,
        Sex = film.Patient.Sex,
        Side = film.Side,
    };

    /// <summary>Row and column spacing in mm that a DICOM file states; null for another file, one that cannot be used, or none of the patient's plane.</summary>
    public static (double Row, double Column)? SpacingOf(string path)
    {
        try
        {
            return ReadIfDicom(path) is { } dicom && Facts(dicom.Film) is { RowSpacingMm: { } row, ColumnSpacingMm: { } column } ? (row, column) : null;
        }
        catch (UnreadableFilmException)
        {
            return null; // said of the film when it is its turn
        }
    }

    /// <summary>Turns away a film whose pixels are known not to be square while nothing gives their size: every angle would be wrong.</summary>
    /// <exception cref="ExchangeFormatException">So it is.</exception>
    public static void ExpectUsableSpacing(string name, DicomFilm film, ResolvedFacts facts)
    {
        if (facts.RowSpacingMm is null && Math.Abs(film.Spacing.RowOverColumn - 1) > 0.001)
        {
            throw new ExchangeFormatException($"{name} has pixels that are not square and gives no size for them; give it with --spacing ROW,COL.");
        }
    }

    /// <summary>True if the file begins as DICOM files do.</summary>
    public static bool StartsAsDicom(string path)
    {
        try
        {
            using var file = File.OpenRead(path);
            Span<byte> start = stackalloc byte[PrefixBytes];
            return file.ReadAtLeast(start, PrefixBytes, throwOnEndOfStream: false) == PrefixBytes && DicomFilmReader.LooksLikeDicom(start);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // Whatever stands in the way, the decoder of pictures meets it next and says so.
            return false;
        }
    }

    private sealed class NativeCodestreams : IPixelDecoder
    {
        public DecodedPixels? Decode(ReadOnlyMemory<byte> codestream) =>
            Codestream.Decode(codestream.Span) is var (width, height, values) ? new DecodedPixels(width, height, values) : null;
    }
}
