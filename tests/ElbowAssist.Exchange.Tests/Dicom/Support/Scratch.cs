namespace ElbowAssist.Exchange.Tests.Dicom.Support;

/// <summary>A folder that goes away with the test.</summary>
internal sealed class Scratch : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("elbowassist-test-");

    public string Folder => folder.FullName;

    public string this[string name] => Path.Combine(folder.FullName, name);

    public string Write(string name, byte[] content)
    {
        File.WriteAllBytes(this[name], content);
        return this[name];
    }

    public void Dispose() => folder.Delete(recursive: true);
}
