using ElbowAssist.Batch.Films;
using ElbowAssist.Testing;

namespace ElbowAssist.Batch.Tests.Results;

public sealed class SourceTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    [Fact]
    public async Task Folder_IsListedWithAllBelow_InTheOrderOfNames()
    {
        foreach (var name in new[] { "b.png", "a.png", "sub/c.png", "sub/deeper/d.png", ".hidden/e.png", "note.txt" })
        {
            folder.Write(name, "film"u8);
        }

        folder.Write("a.png.info.json", "{}"u8);
        Directory.CreateSymbolicLink(folder.File("loop"), folder.Path);
        var source = new FolderSource(folder.Path, p => p.EndsWith(".png", StringComparison.Ordinal));
        Assert.Equal(["a.png", "b.png", "sub/c.png", "sub/deeper/d.png"], await NamesAsync(source));
        var film = await source.OpenAsync(new ListedFilm("a.png"), default);
        Assert.Equal("{}"u8.ToArray(), film!.Sidecar!.Value.ToArray());
        Assert.Null((await source.OpenAsync(new ListedFilm("sub/c.png"), default))!.Sidecar);
    }

    [Theory]
    [InlineData("../secret.png")]
    [InlineData("/etc/hostname")]
    [InlineData("missing.png")]
    [InlineData("")]
    public async Task FilmOutsideTheFolder_OrNone_IsNotOpened(string name)
    {
        folder.Write("secret.png", "film"u8);
        folder.Write("inside/a.png", "film"u8);
        Assert.Null(await new FolderSource(folder.File("inside"), _ => true).OpenAsync(new ListedFilm(name), default));
    }

    [Fact]
    public async Task Dataset_ListsItsImages()
    {
        folder.Write("x/1.png", "film"u8);
        var list = folder.Write("coco.json", "{\"images\": [{\"id\": 1, \"file_name\": \"x/1.png\"}, {\"id\": 2, \"file_name\": \"2.png\"}]}"u8);
        var source = new DatasetSource(list);
        Assert.Equal(["x/1.png", "2.png"], await NamesAsync(source));
        Assert.NotNull(await source.OpenAsync(new ListedFilm("x/1.png"), default));
        Assert.Null(await source.OpenAsync(new ListedFilm("2.png"), default));
        Assert.Throws<BatchException>(() => new DatasetSource(folder.Write("bad.json", "{}"u8)));
        Assert.Throws<BatchException>(() => new DatasetSource(folder.File("missing.json")));
    }

    [Fact]
    public async Task FolderThatIsMissing_IsSaid() =>
        await Assert.ThrowsAsync<BatchException>(() => NamesAsync(new FolderSource(folder.File("missing"), _ => true)));

    public void Dispose() => folder.Dispose();

    private static async Task<List<string>> NamesAsync(IFilmSource source)
    {
        var names = new List<string>();
        await foreach (var film in source.ListAsync(default))
        {
            names.Add(film.Name);
        }

        return names;
    }
}
