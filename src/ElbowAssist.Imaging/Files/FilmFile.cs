using System.Buffers;
using System.Security.Cryptography;

namespace ElbowAssist.Imaging.Files;

/// <summary>
/// Reads PNG, JPEG and TIFF files (8 or 16 bit; grey, or grey stored as colour) into radiographs. EXIF and TIFF
/// orientation is applied: the pixel grid is the one viewers show. A resolution in dots per inch is never a spacing.
/// A colour photograph decodes too; <see cref="RadiographFacts.ColouredShare"/> tells, so that it can be refused.
/// </summary>
public static class FilmFile
{
    /// <summary>Reads a file.</summary>
    /// <param name="path">Path of the file.</param>
    /// <param name="limits">Limits; the default ones if null.</param>
    /// <param name="reuse">Whether the pixels lie in memory that <see cref="Radiograph.Dispose"/> hands to the next film.</param>
    /// <exception cref="UnreadableFilmException">Missing, locked, of no readable format, damaged, cut off or too large.</exception>
    public static Radiograph Read(string path, FilmFileLimits? limits = null, bool reuse = false)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        var name = Path.GetFileName(path);
        byte[]? rented = null;
        try
        {
            int length;
            (rented, length) = Content(path, name, limits);
            return Decode(rented.AsMemory(0, length), name, limits, reuse);
        }
        finally
        {
            if (rented is not null)
            {
                ArrayPool<byte>.Shared.Return(rented);
            }
        }
    }

    /// <summary>The whole file in an array from the pool, which may be longer.</summary>
    private static (byte[] Rented, int Length) Content(string path, string name, FilmFileLimits? limits)
    {
        byte[]? rented = null;
        try
        {
            if (Directory.Exists(path))
            {
                throw new UnreadableFilmException(name, "is a folder; name the film in it.");
            }

            using var file = File.OpenHandle(path, options: FileOptions.SequentialScan);
            var length = RandomAccess.GetLength(file);
            if (length > (limits ?? FilmFileLimits.Default).FileBytes)
            {
                throw TooLargeFile(name, length, limits);
            }

            rented = ArrayPool<byte>.Shared.Rent((int)length);
            var done = 0;
            while (done < length && RandomAccess.Read(file, rented.AsSpan(done, (int)length - done), done) is > 0 and var more)
            {
                done += more;
            }

            return (rented, done);
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            throw new UnreadableFilmException(name, "does not exist; check the name.", e);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            if (rented is not null)
            {
                ArrayPool<byte>.Shared.Return(rented);
            }

            throw new UnreadableFilmException(name, "cannot be opened; check that it may be read and is not in use.", e);
        }
    }

    /// <summary>Decodes the content of a file.</summary>
    /// <param name="file">The whole file.</param>
    /// <param name="fileName">Name without a folder, for facts and messages.</param>
    /// <param name="limits">Limits; the default ones if null.</param>
    /// <param name="reuse">Whether the pixels lie in memory that <see cref="Radiograph.Dispose"/> hands to the next film.</param>
    /// <exception cref="UnreadableFilmException">Of no readable format, damaged, cut off or too large.</exception>
    public static Radiograph Decode(ReadOnlyMemory<byte> file, string fileName, FilmFileLimits? limits = null, bool reuse = false)
    {
        ArgumentNullException.ThrowIfNull(fileName);
        limits ??= FilmFileLimits.Default;
        if (file.Length > limits.FileBytes)
        {
            throw TooLargeFile(fileName, file.Length, limits);
        }

        var container = ContainerIntegrity.Inspect(file.Span, fileName);
        CheckSize(container, fileName, limits);
        var (samples, width, height, coloured) = PixelDecoder.Decode(file.Span, container, fileName, reuse);
        return Radiograph.TakeOver(samples, width, height, new RadiographFacts
        {
            FileName = fileName,
            Sha256 = Convert.ToHexStringLower(SHA256.HashData(file.Span)),
            Format = container.Format,
            BitDepth = container.BitDepth > 8 ? 16 : 8,
            ColouredShare = coloured,
            AppliedOrientation = container.Orientation,
        });
    }

    private static void CheckSize(ContainerFacts container, string fileName, FilmFileLimits limits)
    {
        // Two divisions rather than a product: a hostile header may overflow it.
        if (container.Width > limits.Pixels / container.Height || container.DecodedBytes > limits.DecodedBytes)
        {
            throw new UnreadableFilmException(fileName, string.Create(
                System.Globalization.CultureInfo.InvariantCulture,
                $"has {container.Width} × {container.Height} pixels, more than the limit of {limits.Pixels / 1_000_000} million; export it at a lower resolution."));
        }
    }

    private static UnreadableFilmException TooLargeFile(string name, long length, FilmFileLimits? limits) =>
        new(name, string.Create(
            System.Globalization.CultureInfo.InvariantCulture,
            $"has {length >> 20} MiB, more than the limit of {(limits ?? FilmFileLimits.Default).FileBytes >> 20} MiB; export a single film."));
}
