using System.Buffers.Binary;
using System.Globalization;
using System.Text;
using ElbowAssist.Geometry;
using ElbowAssist.Phantom.Rendering.Field;

namespace ElbowAssist.Phantom.Mesh.Surfaces;

/// <summary>
/// Reads one closed surface from an STL file, binary or ASCII, as the format was first described (3D Systems,
/// Stereolithography Interface Specification, 1989; cited from memory). Normals in the file are not used: the order of the corners says
/// which side is out.
/// </summary>
internal static class StlReader
{
    private const int HeaderLength = 84;
    private const int TriangleLength = 50;

    /// <summary>Reads a file.</summary>
    /// <param name="content">The whole file.</param>
    /// <param name="name">Name of the file for messages.</param>
    /// <returns>The surface in the file's own unit, turned outside out.</returns>
    /// <exception cref="InvalidDataException">In one sentence: what is wrong and where.</exception>
    public static TriangleMesh Read(ReadOnlySpan<byte> content, string name)
    {
        var soup = IsBinary(content) ? Binary(content, name) : IsAscii(content) ? Ascii(content, name) : throw Unknown(content, name);
        var mesh = TriangleMesh.Weld(soup);
        if (mesh.TriangleCount == 0)
        {
            throw new InvalidDataException($"{name} holds no triangle that has an area.");
        }

        if (mesh.WhyNotClosed() is { } why)
        {
            throw new InvalidDataException($"{name} cannot be used as a bone: {why}; mend it in a mesh editor.");
        }

        return mesh.Volume() < 0 ? mesh.Reversed() : mesh;
    }

    private static bool IsBinary(ReadOnlySpan<byte> content) =>
        content.Length >= HeaderLength
        && content.Length == HeaderLength + ((long)TriangleLength * BinaryPrimitives.ReadUInt32LittleEndian(content[80..]));

    private static bool IsAscii(ReadOnlySpan<byte> content) => content.StartsWith("solid"u8) && !content.Contains((byte)0);

    private static InvalidDataException Unknown(ReadOnlySpan<byte> content, string name) => new(
        content.Length < HeaderLength
            ? $"{name} is no STL file: it is {Number(content.Length)} bytes long, shorter than the header of a binary one, and does not begin with \"solid\"."
            : $"{name} is no STL file, or is cut short: its header announces {Number(BinaryPrimitives.ReadUInt32LittleEndian(content[80..]))} triangles, for which its {Number(content.Length)} bytes are the wrong length.");

    private static List<Vec3> Binary(ReadOnlySpan<byte> content, string name)
    {
        var count = (content.Length - HeaderLength) / TriangleLength;
        CheckCount(count, name);
        var soup = new List<Vec3>(3 * count);
        for (var i = 0; i < count; i++)
        {
            var triangle = content.Slice(HeaderLength + (i * TriangleLength), TriangleLength);
            for (var corner = 1; corner <= 3; corner++)
            {
                var place = triangle[(12 * corner)..];
                var p = new Vec3(
                    BinaryPrimitives.ReadSingleLittleEndian(place),
                    BinaryPrimitives.ReadSingleLittleEndian(place[4..]),
                    BinaryPrimitives.ReadSingleLittleEndian(place[8..]));
                CheckFinite(p, name, $"triangle {Number(i + 1)}");
                soup.Add(p);
            }
        }

        return soup;
    }

    private static List<Vec3> Ascii(ReadOnlySpan<byte> content, string name)
    {
        var words = new StlWords(Encoding.ASCII.GetString(content), name);
        var soup = new List<Vec3>();
        words.Expect("solid");
        words.SkipLine();
        while (words.Next("facet", "endsolid") == "facet")
        {
            words.Expect("normal");
            words.Vector();
            words.Expect("outer");
            words.Expect("loop");
            for (var corner = 0; corner < 3; corner++)
            {
                words.Expect("vertex");
                var p = words.Vector();
                CheckFinite(p, name, $"line {Number(words.Line)}");
                soup.Add(p);
            }

            words.Expect("endloop");
            words.Expect("endfacet");
            CheckCount(soup.Count / 3, name);
        }

        words.SkipLine();
        words.ExpectEnd();
        return soup;
    }

    private static void CheckCount(int count, string name)
    {
        if (count > InputLimits.SurfaceTriangles)
        {
            throw new InvalidDataException($"{name} has more than {Number(InputLimits.SurfaceTriangles)} triangles; reduce it in a mesh editor.");
        }
    }

    private static void CheckFinite(Vec3 p, string name, string where)
    {
        if (!float.IsFinite(p.X + p.Y + p.Z))
        {
            throw new InvalidDataException($"{name} is damaged: {where} has a coordinate that is no number.");
        }
    }

    private static string Number(long n) => n.ToString(CultureInfo.InvariantCulture);
}
