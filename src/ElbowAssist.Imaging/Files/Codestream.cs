using ElbowAssist.Imaging.Native;
using OpenCvSharp;

namespace ElbowAssist.Imaging.Files;

/// <summary>
/// Decodes bare JPEG, JPEG 2000 and HTJ2K codestreams, as DICOM files hold them, to the numbers they carry: no scaling,
/// no orientation. The caller must have checked the size in the codestream's header.
/// </summary>
public static class Codestream
{
    /// <summary>
    /// Grey values row by row, colour as its luminance; null if the codestream cannot be decoded. Signed values come as
    /// two's complement of 16 bits.
    /// </summary>
    public static (int Width, int Height, ushort[] Values)? Decode(ReadOnlySpan<byte> codestream)
    {
        NativeLibraries.EnsureLoadable();
        try
        {
            using var decoded = Cv2.ImDecode(codestream, ImreadModes.Unchanged);
            if (decoded.Empty() || decoded.Channels() is not (1 or 3))
            {
                return null;
            }

            using var grey = new Mat();
            if (decoded.Channels() == 3)
            {
                Cv2.CvtColor(decoded, grey, ColorConversionCodes.BGR2GRAY);
            }

            return Values(decoded.Channels() == 3 ? grey : decoded);
        }
        catch (OpenCVException)
        {
            return null;
        }
    }

    private static (int Width, int Height, ushort[] Values)? Values(Mat grey)
    {
        using var wide = new Mat();
        switch (grey.Depth())
        {
            case MatType.CV_8U:
                grey.ConvertTo(wide, MatType.CV_16UC1);
                break;
            case MatType.CV_16U or MatType.CV_16S:
                grey.CopyTo(wide);
                break;
            default:
                return null;
        }

        int rows = wide.Rows, columns = wide.Cols;
        var values = new ushort[rows * columns];
        for (var row = 0; row < rows; row++)
        {
            unsafe
            {
                new ReadOnlySpan<ushort>((void*)wide.Ptr(row), columns).CopyTo(values.AsSpan(row * columns));
            }
        }

        return (columns, rows, values);
    }
}
