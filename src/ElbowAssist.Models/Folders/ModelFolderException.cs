namespace ElbowAssist.Models.Folders;

/// <summary>
/// A model folder that cannot be used: a missing or damaged file, a wrong hash, a landmark or shape that does not fit.
/// The message is one sentence that names the folder. Raised before any film is read.
/// </summary>
public sealed class ModelFolderException : Exception
{
    /// <summary>Creates the exception.</summary>
    /// <param name="folder">Path of the model folder.</param>
    /// <param name="problem">What is wrong and what to do, as the rest of a sentence after the folder's name.</param>
    /// <param name="innerException">The cause, if any.</param>
    public ModelFolderException(string folder, string problem, Exception? innerException = null)
        : base($"Model folder {Path.GetFileName(Path.TrimEndingDirectorySeparator(folder))} {problem}", innerException) =>
        Folder = folder;

    /// <summary>Path of the model folder.</summary>
    public string Folder { get; }
}
