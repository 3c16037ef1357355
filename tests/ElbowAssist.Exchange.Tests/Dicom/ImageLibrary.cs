using ElbowAssist.Exchange.Dicom.Pixels;
using ElbowAssist.Imaging.Files;

namespace ElbowAssist.Exchange.Tests.Dicom;

/// <summary>The codings that the image library decodes, as the program takes them.</summary>
internal sealed class ImageLibrary : IPixelDecoder
{
    public DecodedPixels? Decode(ReadOnlyMemory<byte> codestream) =>
        Codestream.Decode(codestream.Span) is var (width, height, values) ? new(width, height, values) : null;
}
