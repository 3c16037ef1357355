using System.Text;
using CsCheck;
using ElbowAssist.Phantom.Mesh.Surfaces;
using ElbowAssist.Phantom.Rendering.Field;

namespace ElbowAssist.Phantom.Tests.Mesh;

public sealed class StlReaderTests
{
    private const string Name = "humerus.stl";
    private static readonly IReadOnlyList<Vec3> Box = Bodies.Box(new Vec3(-1, -2, -3.5f), new Vec3(2, 4, 5));

    [Fact]
    public void BinaryAndAscii_GiveTheSameBox()
    {
        var binary = StlReader.Read(StlFiles.Binary(Box), Name);
        var ascii = StlReader.Read(Encoding.ASCII.GetBytes(StlFiles.Ascii(Box)), Name);
        Assert.Equal(8, binary.Vertices.Count);
        Assert.Equal(12, binary.TriangleCount);
        Assert.Equal(3 * 6 * 8.5, binary.Volume(), 4);
        Assert.Equal(binary.Vertices, ascii.Vertices);
        Assert.Equal(binary.Volume(), ascii.Volume(), 6);
    }

    [Fact]
    public void ABoxTurnedInsideOut_IsTurnedBack()
    {
        var inside = Enumerable.Range(0, Box.Count / 3).SelectMany(i => new[] { Box[3 * i], Box[(3 * i) + 2], Box[(3 * i) + 1] }).ToList();
        Assert.Equal(3 * 6 * 8.5, StlReader.Read(StlFiles.Binary(inside), Name).Volume(), 4);
    }

    /// <summary>A binary file may begin like an ASCII one: its length decides.</summary>
    [Fact]
    public void ABinaryFileThatBeginsWithSolid_IsBinary()
    {
        var file = StlFiles.Binary(Box);
        "solid"u8.CopyTo(file);
        Assert.Equal(12, StlReader.Read(file, Name).TriangleCount);
    }

    [Fact]
    public void AFileCutAnywhere_IsRefusedInOneSentence()
    {
        var binary = StlFiles.Binary(Box);
        var ascii = Encoding.ASCII.GetBytes(StlFiles.Ascii(Box));
        for (var length = 0; length < binary.Length; length++)
        {
            Refused(binary[..length]);
        }

        // What follows the last keyword is only the name of the solid.
        for (var length = 0; length < StlFiles.Ascii(Box).IndexOf("endsolid", StringComparison.Ordinal) + 7; length++)
        {
            Refused(ascii[..length]);
        }
    }

    [Theory]
    [InlineData("outer loop", "outer lop", "line 3 should have \"loop\", but there is \"lop\"")]
    [InlineData("vertex -1", "vertex minus", "line 4 should have a number, but there is \"minus\"")]
    [InlineData("vertex -1", "vertex NaN", "line 4 has a coordinate that is no number")]
    [InlineData("endsolid", "solid another\nendsolid", "should have \"facet\" or \"endsolid\"")]
    public void WrongWords_AreNamedWithTheirLine(string word, string wrong, string message)
    {
        var text = StlFiles.Ascii(Box);
        var at = text.IndexOf(word, StringComparison.Ordinal);
        var damaged = string.Concat(text.AsSpan(0, at), wrong, text.AsSpan(at + word.Length));
        Assert.Contains(message, Refused(Encoding.ASCII.GetBytes(damaged)), StringComparison.Ordinal);
    }

    [Fact]
    public void ASurfaceWithAHole_OrATurnedTriangle_IsRefused()
    {
        Assert.Contains("3 of 18 edges", Refused(StlFiles.Binary([.. Box.Skip(3)])), StringComparison.Ordinal);
        List<Vec3> turned = [Box[0], Box[2], Box[1], .. Box.Skip(3)];
        Assert.Contains("not closed", Refused(StlFiles.Binary(turned)), StringComparison.Ordinal);
        Assert.Contains("no triangle", Refused(StlFiles.Binary([])), StringComparison.Ordinal);
        Assert.Contains("no number", Refused(StlFiles.Binary([new Vec3(float.NaN, 0, 0), .. Box.Skip(1)])), StringComparison.Ordinal);
    }

    [Fact]
    public void NoiseOfAnyKind_IsReadOrRefused() =>
        Gen.Byte.Array[0, 400].Sample(bytes => Refused(bytes));

    private static string Refused(byte[] file)
    {
        var message = Assert.Throws<InvalidDataException>(() => StlReader.Read(file, Name)).Message;
        Assert.StartsWith(Name, message, StringComparison.Ordinal);
        Assert.EndsWith(".", message, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', message);
        return message;
    }
}
