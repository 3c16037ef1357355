namespace ElbowAssist.Imaging.Files;

/// <summary>
/// A file that cannot become a radiograph: of no readable format, damaged, cut off, or beyond a limit. The message is
/// one sentence for the user and names the file.
/// </summary>
public sealed class UnreadableFilmException : Exception
{
    /// <summary>Creates the exception.</summary>
    /// <param name="fileName">File name without its folder.</param>
    /// <param name="problem">What is wrong and what to do, as the rest of a sentence after the file name.</param>
    /// <param name="innerException">The cause, if any.</param>
    public UnreadableFilmException(string fileName, string problem, Exception? innerException = null)
        : base($"{fileName} {problem}", innerException) => FileName = fileName;

    /// <summary>File name without its folder.</summary>
    public string FileName { get; }
}
