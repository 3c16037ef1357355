namespace ElbowAssist.Imaging.Files;

/// <summary>What the header of an intact file says about its picture, as stored.</summary>
/// <param name="Format">File format.</param>
/// <param name="Width">Stored columns.</param>
/// <param name="Height">Stored rows.</param>
/// <param name="BitDepth">Bits of one sample.</param>
/// <param name="Channels">Samples of one pixel after expanding a palette.</param>
/// <param name="Orientation">EXIF or TIFF orientation, 1 (as stored) to 8.</param>
internal readonly record struct ContainerFacts(
    FilmFormat Format, long Width, long Height, int BitDepth, int Channels, int Orientation)
{
    public long DecodedBytes => Width * Height * Channels * (BitDepth > 8 ? 2 : 1);
}
