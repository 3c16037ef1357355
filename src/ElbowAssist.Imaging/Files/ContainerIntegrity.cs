namespace ElbowAssist.Imaging.Files;

/// <summary>
/// Walks the container of a file without decoding pixels and refuses what is cut off or damaged. Needed because
/// decoders fill the missing rows of a cut file and say nothing, and a film with a grey lower half could be read.
/// </summary>
internal static class ContainerIntegrity
{
    /// <summary>The header of an intact file.</summary>
    /// <exception cref="UnreadableFilmException">Unknown format, damaged or cut off.</exception>
    public static ContainerFacts Inspect(ReadOnlySpan<byte> file, string fileName)
    {
        try
        {
            if (PngContainer.Is(file))
            {
                return PngContainer.Inspect(file);
            }

            if (JpegContainer.Is(file))
            {
                return JpegContainer.Inspect(file);
            }

            if (TiffContainer.Is(file))
            {
                return TiffContainer.Inspect(file);
            }
        }
        catch (DamagedContainerException damage)
        {
            throw new UnreadableFilmException(fileName, damage.Message, damage);
        }

        throw new UnreadableFilmException(fileName, file.IsEmpty
            ? "is empty; export the film again."
            : "is no PNG, JPEG or TIFF picture; export the film in one of these formats, or as DICOM.");
    }
}
