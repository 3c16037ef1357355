using System.Runtime.InteropServices;
using ElbowAssist.Imaging.Native;
using OpenCvSharp;

namespace ElbowAssist.Imaging.Files;

/// <summary>Decodes the pixels of an intact container with OpenCV and reduces them to one grey channel.</summary>
internal static class PixelDecoder
{
    private const double ColouredSpread = 0.06;

    /// <summary>Samples in the orientation viewers show, their size, and the share of coloured pixels.</summary>
    /// <exception cref="UnreadableFilmException">The decoder gives no picture, or one of another size than the header.</exception>
    public static (GreySamples Samples, int Width, int Height, double ColouredShare) Decode(
        ReadOnlySpan<byte> file, ContainerFacts container, string fileName, bool reuse)
    {
        NativeLibraries.EnsureLoadable();
        using var stored = DecodeStored(file, fileName);
        // OpenCV turns TIFF pages upright by itself, and always.
        var upright = container.Format == FilmFormat.Tiff;
        var lying = upright && container.Orientation > 4;
        if (stored.Empty() || stored.Cols != (lying ? container.Height : container.Width) ||
            stored.Rows != (lying ? container.Width : container.Height) || stored.Depth() is not (MatType.CV_8U or MatType.CV_16U) || stored.Channels() is not (1 or 3 or 4))
        {
            throw new UnreadableFilmException(fileName, "cannot be decoded although its header is sound; export it again.");
        }

        using var grey = new Mat();
        var coloured = stored.Channels() == 1 ? 0 : ToGrey(stored, grey);
        using var turned = new Mat();
        var shown = Turn(stored.Channels() == 1 ? stored : grey, turned, upright ? 1 : container.Orientation);
        var samples = reuse ? GreySamples.Pooled(shown.Cols, shown.Rows) : GreySamples.Own(shown.Cols, shown.Rows);
        using var target = Mat.FromPixelData(shown.Rows, shown.Cols, MatType.CV_16UC1, samples.Array);
        // Sample depth scaling as the PNG specification recommends (13.12): 255 becomes 65 535.
        shown.ConvertTo(target, MatType.CV_16UC1, shown.Depth() == MatType.CV_8U ? 257 : 1);
        return (samples, shown.Cols, shown.Rows, coloured);
    }

    private static Mat DecodeStored(ReadOnlySpan<byte> file, string fileName)
    {
        try
        {
            // Unchanged keeps the bit depth and leaves EXIF orientation to us.
            return Cv2.ImDecode(file, ImreadModes.Unchanged);
        }
        catch (OpenCVException e)
        {
            throw new UnreadableFilmException(fileName, "cannot be decoded although its header is sound; export it again.", e);
        }
    }

    private static double ToGrey(Mat stored, Mat grey)
    {
        int rows = stored.Rows, columns = stored.Cols, channels = stored.Channels();
        var eightBit = stored.Depth() == MatType.CV_8U;
        grey.Create(rows, columns, MatType.MakeType(stored.Depth(), 1));
        long coloured = 0;
        for (var row = 0; row < rows; row++)
        {
            coloured += eightBit
                ? GreyRow(Row<byte>(stored, row), Row<byte>(grey, row), channels, 255 * ColouredSpread)
                : GreyRow(Row<ushort>(stored, row), Row<ushort>(grey, row), channels, 65535 * ColouredSpread);
        }

        return (double)coloured / ((long)rows * columns);
    }

    /// <summary>Luma of ITU-R BT.601 in whole numbers; exact for pixels whose channels are equal.</summary>
    private static long GreyRow<T>(Span<T> colour, Span<T> grey, int channels, double spread)
        where T : unmanaged, System.Numerics.IBinaryInteger<T>
    {
        long coloured = 0;
        for (var x = 0; x < grey.Length; x++)
        {
            var pixel = colour.Slice(x * channels, 3);
            int b = int.CreateTruncating(pixel[0]), g = int.CreateTruncating(pixel[1]), r = int.CreateTruncating(pixel[2]);
            grey[x] = T.CreateTruncating(((114 * b) + (587 * g) + (299 * r) + 500) / 1000);
            if (Math.Max(r, Math.Max(g, b)) - Math.Min(r, Math.Min(g, b)) > spread)
            {
                coloured++;
            }
        }

        return coloured;
    }

    private static unsafe Span<T> Row<T>(Mat mat, int row)
        where T : unmanaged => new((void*)mat.Ptr(row), mat.Cols * mat.Channels());

    /// <summary>The EXIF orientations: mirrored across, turned by half, upside down, transposed, turned by a quarter…</summary>
    private static Mat Turn(Mat stored, Mat turned, int orientation)
    {
        switch (orientation)
        {
            case 2:
                Cv2.Flip(stored, turned, FlipMode.Y);
                return turned;
            case 3:
                Cv2.Flip(stored, turned, FlipMode.XY);
                return turned;
            case 4:
                Cv2.Flip(stored, turned, FlipMode.X);
                return turned;
            case 5:
                Cv2.Transpose(stored, turned);
                return turned;
            case 6:
                Cv2.Rotate(stored, turned, RotateFlags.Rotate90Clockwise);
                return turned;
            case 7:
                using (var transposed = new Mat())
                {
                    Cv2.Transpose(stored, transposed);
                    Cv2.Flip(transposed, turned, FlipMode.XY);
                }

                return turned;
            case 8:
                Cv2.Rotate(stored, turned, RotateFlags.Rotate90Counterclockwise);
                return turned;
            default:
                return stored;
        }
    }
}
