using ElbowAssist.Exchange.Tests.Dicom.Support;
using ElbowAssist.Exchange.Watching;

namespace ElbowAssist.Exchange.Tests.Watching;

/// <summary>Files are handed on once, whole, and only when wanted.</summary>
public sealed class WatchedFolderTests : IDisposable
{
    private readonly Scratch scratch = new();
    private readonly WatchedFolder folder;

    public WatchedFolderTests() => folder = new(scratch.Folder, p => p.EndsWith(".dcm", StringComparison.Ordinal));

    [Fact]
    public void FileThatStoppedChanging_IsHandedOnOnce()
    {
        scratch.Write("a.dcm", [1, 2, 3]);
        scratch.Write("note.txt", [1]);

        Assert.Empty(folder.Look());
        Assert.Equal([scratch["a.dcm"]], folder.Look());
        Assert.Empty(folder.Look());
    }

    [Fact]
    public void FileThatGrows_IsHandedOnWhenItIsWhole()
    {
        scratch.Write("a.dcm", [1]);
        folder.Look();
        scratch.Write("a.dcm", [1, 2]);
        Assert.Empty(folder.Look());
        scratch.Write("a.dcm", [1, 2, 3]);
        Assert.Empty(folder.Look());

        Assert.Equal([scratch["a.dcm"]], folder.Look());
    }

    [Fact]
    public void FileHeldOpenByItsWriter_Waits()
    {
        using (var writer = new FileStream(scratch["a.dcm"], FileMode.Create, FileAccess.Write, FileShare.None))
        {
            writer.WriteByte(1);
            writer.Flush();
            folder.Look();
            Assert.Empty(folder.Look());
        }

        Assert.Equal([scratch["a.dcm"]], new[] { folder.Look(), folder.Look() }.SelectMany(f => f));
    }

    [Fact]
    public void EmptyAndHiddenFiles_AreNotHandedOn_AndANewFileOfAnOldNameIs()
    {
        scratch.Write("empty.dcm", []);
        scratch.Write(".part.dcm", [1]);
        scratch.Write("a.dcm", [1]);
        folder.Look();
        Assert.Equal([scratch["a.dcm"]], folder.Look());
        File.Delete(scratch["a.dcm"]);
        folder.Look();
        scratch.Write("a.dcm", [9, 9]);
        folder.Look();

        Assert.Equal([scratch["a.dcm"]], folder.Look());
    }

    [Fact]
    public async Task Watching_EndsWhenCancelled()
    {
        using var stop = new CancellationTokenSource();
        var watched = new WatchedFolder(scratch.Folder, _ => true, TimeSpan.FromMilliseconds(5));
        scratch.Write("a.dcm", [1]);
        var seen = new List<string>();
        await foreach (var file in watched.CompleteFilesAsync(stop.Token))
        {
            seen.Add(file);
            await stop.CancelAsync();
        }

        Assert.Equal([scratch["a.dcm"]], seen);
    }

    public void Dispose() => scratch.Dispose();
}
