namespace ElbowAssist.Fuzzing;

/// <summary>A folder of this process for what is read from files, in memory where there is such a place.</summary>
internal static class Scratch
{
    static Scratch() => AppDomain.CurrentDomain.ProcessExit += (_, _) => Directory.Delete(Folder, recursive: true);

    public static string Folder { get; } = Directory.CreateDirectory(
        Path.Combine(Directory.Exists("/dev/shm") ? "/dev/shm" : Path.GetTempPath(), $"elbowassist-fuzz-{Environment.ProcessId}")).FullName;

    /// <summary>Writes a file.</summary>
    /// <returns>Its path.</returns>
    public static string Write(string name, byte[] content)
    {
        var path = Path.Combine(Folder, name);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllBytes(path, content);
        return path;
    }
}
