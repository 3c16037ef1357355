namespace ElbowAssist.Imaging.Files;

/// <summary>What is wrong with a container, as the rest of a sentence after the file name.</summary>
internal sealed class DamagedContainerException(string problem) : Exception(problem)
{
    public static DamagedContainerException CutOff(string format) =>
        new($"is a {format} file that ends too early; copy or export it again.");

    public static DamagedContainerException Damaged(string format, string where) =>
        new($"is a damaged {format} file ({where}); copy or export it again.");

    public static DamagedContainerException Unsupported(string format, string what) =>
        new($"is a {format} file with {what}, which is not supported; export it as 8 or 16 bit grey.");
}
