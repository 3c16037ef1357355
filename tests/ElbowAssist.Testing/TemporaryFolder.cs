namespace ElbowAssist.Testing;

/// <summary>A folder that is gone when the test is.</summary>
public sealed class TemporaryFolder : IDisposable
{
    /// <summary>Creates an empty folder.</summary>
    public TemporaryFolder() => Path = Directory.CreateTempSubdirectory("elbowassist-test-").FullName;

    /// <summary>Full path.</summary>
    public string Path { get; }

    /// <summary>Full path of a file or folder inside.</summary>
    public string File(params string[] parts) => System.IO.Path.Combine([Path, .. parts]);

    /// <summary>Writes a file and returns its full path.</summary>
    public string Write(string name, ReadOnlySpan<byte> content)
    {
        var path = File(name);
        Directory.CreateDirectory(System.IO.Path.GetDirectoryName(path)!);
        System.IO.File.WriteAllBytes(path, content);
        return path;
    }

    /// <inheritdoc/>
    public void Dispose() => Directory.Delete(Path, recursive: true);
}
