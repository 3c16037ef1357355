namespace ElbowAssist.Cli.Films;

/// <summary>Writes the outputs of a film whole or not at all.</summary>
internal static class OutputFiles
{
    /// <summary>
    /// Writes every file under a temporary name first and renames them when all are complete, in the order given, so that
    /// neither a full disk nor Ctrl-C leaves half a file.
    /// </summary>
    /// <exception cref="UserErrorException">The folder cannot be written.</exception>
    public static void Write(string folder, IReadOnlyList<(string Name, byte[] Content)> files, CancellationToken cancellation)
    {
        var written = new List<(string Temporary, string Final)>();
        try
        {
            Directory.CreateDirectory(folder);
            foreach (var (name, content) in files)
            {
                cancellation.ThrowIfCancellationRequested();
                var temporary = Path.Combine(folder, $".{name}.{Guid.NewGuid():N}.part");
                written.Add((temporary, Path.Combine(folder, name)));
                File.WriteAllBytes(temporary, content);
            }

            cancellation.ThrowIfCancellationRequested();
            foreach (var (temporary, final) in written)
            {
                File.Move(temporary, final, overwrite: true);
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentOutOfRangeException)
        {
            // The last is how the runtime tells of a file that the file system has no room to grow.
            throw new UserErrorException($"The folder {folder} cannot be written; check that there is room and that it may be written.");
        }
        finally
        {
            foreach (var (temporary, _) in written)
            {
                File.Delete(temporary);
            }
        }
    }
}
