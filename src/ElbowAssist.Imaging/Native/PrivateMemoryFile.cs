using System.Globalization;
using System.Runtime.InteropServices;
using Microsoft.Win32.SafeHandles;

namespace ElbowAssist.Imaging.Native;

/// <summary>
/// Gives bytes a path that the dynamic linker can open: an anonymous memory file of this process where the kernel has
/// them (Linux 3.17), so nothing is written to disk, otherwise a file in a new folder only this user can enter.
/// </summary>
internal sealed partial class PrivateMemoryFile : IDisposable
{
    private readonly SafeFileHandle? memory;
    private readonly DirectoryInfo? folder;

    private PrivateMemoryFile(string path, SafeFileHandle? memory, DirectoryInfo? folder)
    {
        Path = path;
        this.memory = memory;
        this.folder = folder;
    }

    /// <summary>Path valid until this object is disposed.</summary>
    public string Path { get; }

    /// <summary>A memory file, or null if the kernel refuses one.</summary>
    public static PrivateMemoryFile? InMemory(string name, ReadOnlySpan<byte> content)
    {
        const uint closeOnExec = 1;
        int descriptor;
        try
        {
            descriptor = MemfdCreate(name, closeOnExec);
        }
        catch (EntryPointNotFoundException)
        {
            return null;
        }

        if (descriptor < 0)
        {
            return null;
        }

        var handle = new SafeFileHandle(descriptor, ownsHandle: true);
        RandomAccess.Write(handle, content, 0);
        return new PrivateMemoryFile(string.Create(CultureInfo.InvariantCulture, $"/proc/self/fd/{descriptor}"), handle, null);
    }

    /// <summary>A file in a new private folder below the temporary folder.</summary>
    /// <exception cref="IOException">The temporary folder cannot be written.</exception>
    public static PrivateMemoryFile OnDisk(string name, ReadOnlySpan<byte> content)
    {
        var created = Directory.CreateTempSubdirectory("elbowassist-");
        var path = System.IO.Path.Combine(created.FullName, name);
        File.WriteAllBytes(path, content);
        return new PrivateMemoryFile(path, null, created);
    }

    /// <summary>Closes the memory file or removes the folder; a library already loaded from it stays loaded.</summary>
    public void Dispose()
    {
        memory?.Dispose();
        folder?.Delete(recursive: true);
    }

    [LibraryImport("libc", EntryPoint = "memfd_create", StringMarshalling = StringMarshalling.Utf8)]
    private static partial int MemfdCreate(string name, uint flags);
}
