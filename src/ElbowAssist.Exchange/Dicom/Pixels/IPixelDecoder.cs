namespace ElbowAssist.Exchange.Dicom.Pixels;

/// <summary>Decodes the codings that are left to a native library: JPEG baseline, JPEG 2000 and HTJ2K.</summary>
public interface IPixelDecoder
{
    /// <summary>
    /// Decodes one codestream to grey values without any scaling: the numbers the codestream holds. A colour image
    /// becomes its luminance. Returns null if the codestream cannot be decoded; never throws for bad content.
    /// </summary>
    /// <param name="codestream">A complete JPEG or JPEG 2000 codestream.</param>
    DecodedPixels? Decode(ReadOnlyMemory<byte> codestream);
}

/// <summary>Grey values of a codestream.</summary>
/// <param name="Width">Columns.</param>
/// <param name="Height">Rows.</param>
/// <param name="Values">Row by row; signed values as two's complement of 16 bits.</param>
public sealed record DecodedPixels(int Width, int Height, ReadOnlyMemory<ushort> Values);
