using ElbowAssist.Batch.Results;
using ElbowAssist.Testing;

namespace ElbowAssist.Batch.Tests.Results;

public sealed class ResultsFileTests : IDisposable
{
    private static readonly Recipe Recipe = new(new string('a', 64), "0.1.0-test");
    private static readonly FilmResult Result = FilmResult.Unreadable("It is no film.");
    private readonly TemporaryFolder folder = new();

    private string Path => folder.File("out", "results.jsonl");

    [Fact]
    public void CutOffAnywhere_IsGoneOnWith_AndEndsEqual()
    {
        Fill(0, 3);
        var whole = File.ReadAllBytes(Path);
        for (var length = 0; length <= whole.Length; length++)
        {
            File.WriteAllBytes(Path, whole[..length]);
            using (var results = ResultsFile.Open(Path, Recipe))
            {
                Assert.Equal(whole.AsSpan(0, length).Count((byte)'\n'), results.Count);
            }

            Fill(0, 3);
            Assert.Equal(whole, File.ReadAllBytes(Path));
        }
    }

    [Fact]
    public void ResultThatIsThere_IsNotAddedAgain()
    {
        using var results = ResultsFile.Open(Path, Recipe);
        Assert.True(results.Add(Content(1), "a.png", Result));
        Assert.False(results.Add(Content(1), "a.png", Result));
        Assert.True(results.Add(Content(1), "b.png", Result)); // the same film under another name has a line of its own
        Assert.True(results.Holds(Content(1), "a.png"));
        Assert.False(results.Holds(Content(2), "a.png"));
        Assert.Equal(2, results.CountOf(FilmEnd.Unreadable));
    }

    [Theory]
    [InlineData("{\"schema\": \"other\"}\n")]
    [InlineData("no JSON\n")]
    [InlineData("\n")]
    [InlineData("[]\n")]
    public void SomeOtherFile_IsLeftAlone(string content)
    {
        folder.Write("out/results.jsonl", System.Text.Encoding.UTF8.GetBytes(content));
        var refused = Assert.Throws<BatchException>(() => ResultsFile.Open(Path, Recipe));
        Assert.Contains("name another file", refused.Message, StringComparison.Ordinal);
        Assert.Equal(content, File.ReadAllText(Path));
    }

    [Fact]
    public void ResultsOfOtherModelsOrVersion_AreNotMixed()
    {
        Fill(0, 1);
        Assert.Throws<BatchException>(() => ResultsFile.Open(Path, Recipe with { Models = new string('b', 64) }));
        Assert.Throws<BatchException>(() => ResultsFile.Open(Path, Recipe with { Pipeline = "0.2.0-test" }));
    }

    [Fact]
    public void SecondProcess_IsTurnedAway()
    {
        using var first = ResultsFile.Open(Path, Recipe);
        Assert.Contains("no other run", Assert.Throws<BatchException>(() => ResultsFile.Open(Path, Recipe)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void FileWithoutAnEnd_IsNoResults()
    {
        // This device gives zeros for ever (full(4)).
        Assert.Contains("are no results", Assert.Throws<BatchException>(() => ResultsFile.Open("/dev/full", Recipe)).Message, StringComparison.Ordinal);
    }

    public void Dispose() => folder.Dispose();

    private static string Content(int film) => film.ToString("x64", System.Globalization.CultureInfo.InvariantCulture);

    private void Fill(int from, int count)
    {
        using var results = ResultsFile.Open(Path, Recipe);
        for (var i = from; i < from + count; i++)
        {
            results.Add(Content(i), FormattableString.Invariant($"{i}.png"), Result);
        }
    }
}
