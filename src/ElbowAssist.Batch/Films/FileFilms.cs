using ElbowAssist.Exchange.Dicom.Format;
using ElbowAssist.Exchange.Json.Facts;

namespace ElbowAssist.Batch.Films;

/// <summary>Films that are files below a folder.</summary>
internal static class FileFilms
{
    /// <summary>Opens a film by its name; null where it is not there, may not be read, is too large or lies outside the folder.</summary>
    public static async Task<FilmBytes?> OpenAsync(string root, string name, CancellationToken cancellation)
    {
        var path = Path.GetFullPath(Path.Combine(root, name));
        var inside = Path.TrimEndingDirectorySeparator(Path.GetFullPath(root)) + Path.DirectorySeparatorChar;
        if (!path.StartsWith(inside, StringComparison.Ordinal))
        {
            return null;
        }

        try
        {
            if (new FileInfo(path).Length > DicomLimits.Default.MaxBytes)
            {
                return null;
            }

            var content = await File.ReadAllBytesAsync(path, cancellation).ConfigureAwait(false);
            var sidecar = path + SidecarJson.Suffix;
            return new FilmBytes(
                Path.GetFileName(path),
                content,
                File.Exists(sidecar) ? new ReadOnlyMemory<byte>(await File.ReadAllBytesAsync(sidecar, cancellation).ConfigureAwait(false)) : new ReadOnlyMemory<byte>?());
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }
}
