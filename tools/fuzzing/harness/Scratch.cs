namespace ElbowAssist.Fuzzing;

/// <summary>A folder of this process for what is read from files, in memory where there is such a place.</summary>
internal static class Scratch
{
    private const string Prefix = "elbowassist-fuzz-";
    private static readonly string Place = Directory.Exists("/dev/shm") ? "/dev/shm" : Path.GetTempPath();

    static Scratch()
    {
        // A fuzzer kills its processes, so each takes away what those before it left.
        foreach (var left in Directory.EnumerateDirectories(Place, Prefix + "*").Where(d => !Directory.Exists("/proc/" + Path.GetFileName(d)[Prefix.Length..])))
        {
            try
            {
                Directory.Delete(left, recursive: true);
            }
            catch (IOException)
            {
                continue; // another process takes it away
            }
        }

        AppDomain.CurrentDomain.ProcessExit += (_, _) => Directory.Delete(Folder, recursive: true);
    }

    public static string Folder { get; } = Directory.CreateDirectory(Path.Combine(Place, $"{Prefix}{Environment.ProcessId}")).FullName;

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
