using System.IO.Compression;
using System.Text;
using CsCheck;
using ElbowAssist.Batch.Films;
using ElbowAssist.Batch.Queue;
using ElbowAssist.Batch.Results;

namespace ElbowAssist.Batch.Tests.Results;

/// <summary>Bytes that come from files and servers: told apart, and never trusted.</summary>
public sealed class StoredBytesTests
{
    [Fact]
    public void ContentHash_TellsApartWhateverDiffers()
    {
        var film = new FilmBytes("a.png", "pixels"u8.ToArray(), "{}"u8.ToArray());
        string[] hashes =
        [
            ContentHash.Of(film, "{}"u8.ToArray()),
            ContentHash.Of(film with { FileName = "b.png" }, "{}"u8.ToArray()),
            ContentHash.Of(film with { Content = "pixel"u8.ToArray() }, "s{}"u8.ToArray()),
            ContentHash.Of(film with { Sidecar = null }, "{}"u8.ToArray()),
            ContentHash.Of(film with { Sidecar = ReadOnlyMemory<byte>.Empty }, "{}"u8.ToArray()),
            ContentHash.Of(film with { Sidecar = null }, "{}{}"u8.ToArray()),
        ];
        Assert.Equal(hashes.Length, hashes.Distinct(StringComparer.Ordinal).Count());
        Assert.All(hashes, h => Assert.Equal(64, h.Length));
    }

    [Fact]
    public void Result_ComesBackFromTheServerAsItWas()
    {
        var result = FilmResult.Unreadable("b.png is damaged.");
        var back = PackedResult.Unpack(PackedResult.Pack(result))!;
        Assert.Equal(FilmEnd.Unreadable, back.End);
        Assert.Equal(result.Json.ToArray(), back.Json.ToArray());
    }

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("{}")]
    public void Message_BringsTheFilmItWasMadeOf(string? sidecar)
    {
        var film = new FilmBytes("a.png", "pixels"u8.ToArray(), sidecar is null ? null : new ReadOnlyMemory<byte>?(Encoding.UTF8.GetBytes(sidecar)));
        var hash = ContentHash.Of(film, "{}"u8.ToArray());
        var back = WorkMessage.Parse(new WorkMessage(hash, film.FileName, "{}"u8.ToArray(), film.Sidecar?.ToArray(), null, null).Write())!;
        Assert.Equal(hash, ContentHash.Of(back.FilmOf(film.Content.ToArray()), back.Options));
    }

    [Fact]
    public void ResultThatUnpacksToFarTooMuch_IsNone()
    {
        using var packed = new MemoryStream();
        using (var stream = new BrotliStream(packed, CompressionLevel.Fastest))
        {
            var zeros = new byte[1 << 20];
            for (var i = 0; i < 64; i++)
            {
                stream.Write(zeros);
            }
        }

        Assert.Null(PackedResult.Unpack(packed.ToArray()));
    }

    [Fact]
    public void AnyBytes_AreAResultAMessageOrALine_OrNone() => Gen.Byte.Array[0, 200].Sample(bytes =>
    {
        Assert.Null(PackedResult.Unpack(bytes));
        Assert.Null(FilmResult.Parse(bytes));
        Assert.Null(WorkMessage.Parse(bytes));
        Assert.Null(ResultLine.Parse(bytes));
    });

    [Theory]
    [InlineData("{}")]
    [InlineData("null")]
    [InlineData("{\"content\": \"short\", \"fileName\": \"a.png\", \"options\": \"e30=\"}")]
    [InlineData("{\"content\": null, \"fileName\": \"a.png\", \"options\": \"e30=\"}")]
    [InlineData("{\"content\": \"0000000000000000000000000000000000000000000000000000000000000000\", \"fileName\": \"a.png\", \"options\": null}")]
    public void MessageThatLacksSomething_IsNone(string json) => Assert.Null(WorkMessage.Parse(Encoding.UTF8.GetBytes(json)));
}
