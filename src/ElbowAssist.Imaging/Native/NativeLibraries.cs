using System.Runtime.InteropServices;

namespace ElbowAssist.Imaging.Native;

/// <summary>
/// Makes the OpenCV library loadable on machines without a desktop. The served Linux build names GTK, Cairo and other
/// window libraries as needed, although decoding and filtering never call them and they are bound lazily. For each one
/// that the system does not have, an empty library of the same SONAME is loaded first; the dynamic linker takes a loaded
/// SONAME as found. Libraries the system has are left to it.
/// </summary>
public static class NativeLibraries
{
    private const string OpenCvFile = "libOpenCvSharpExtern.so";

    private static readonly Lazy<IReadOnlyList<string>> Stubbed = new(Load);

    /// <summary>
    /// Loads what OpenCV needs, once per process; later calls return at once. Called by every public door of this
    /// project that uses OpenCV.
    /// </summary>
    /// <returns>SONAMEs that the system lacks and that were stood in for; empty on a system with a desktop.</returns>
    public static IReadOnlyList<string> EnsureLoadable() => Stubbed.Value;

    private static List<string> Load()
    {
        var stubbed = new List<string>();
        if (!OperatingSystem.IsLinux() || RuntimeInformation.ProcessArchitecture != Architecture.X64 ||
            FindOpenCv() is not { } openCv)
        {
            return stubbed;
        }

        var files = new List<PrivateMemoryFile>();
        try
        {
            foreach (var soname in NeededLibraries.Of(openCv))
            {
                if (!NativeLibrary.TryLoad(soname, out _) && LoadStub(soname, files))
                {
                    stubbed.Add(soname);
                }
            }
        }
        finally
        {
            // Held until now because the linker would take a reused descriptor number for the library it named before.
            files.ForEach(f => f.Dispose());
        }

        return stubbed;
    }

    private static bool LoadStub(string soname, List<PrivateMemoryFile> files)
    {
        var content = StubLibrary.Create(soname);
        if (PrivateMemoryFile.InMemory(soname, content) is { } memory)
        {
            files.Add(memory);
            if (NativeLibrary.TryLoad(memory.Path, out _))
            {
                return true;
            }
        }

        try
        {
            var disk = PrivateMemoryFile.OnDisk(soname, content);
            files.Add(disk);
            return NativeLibrary.TryLoad(disk.Path, out _);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return false;
        }
    }

    private static string? FindOpenCv()
    {
        var searched = (AppContext.GetData("NATIVE_DLL_SEARCH_DIRECTORIES") as string ?? "")
            .Split(Path.PathSeparator, StringSplitOptions.RemoveEmptyEntries);
        return searched
            .Append(AppContext.BaseDirectory)
            .Append(Path.Combine(AppContext.BaseDirectory, "runtimes", "linux-x64", "native"))
            .Select(folder => Path.Combine(folder, OpenCvFile))
            .FirstOrDefault(File.Exists);
    }
}
