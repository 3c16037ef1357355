using System.Globalization;
using System.Text;
using ElbowAssist.Phantom.Rendering.Field;

namespace ElbowAssist.Phantom.Tests.Mesh;

/// <summary>Writes STL files.</summary>
internal static class StlFiles
{
    public static byte[] Binary(IReadOnlyList<Vec3> soup)
    {
        using var stream = new MemoryStream();
        using var writer = new BinaryWriter(stream);
        writer.Write(new byte[80]);
        writer.Write(soup.Count / 3);
        for (var i = 0; i < soup.Count; i += 3)
        {
            writer.Write(new byte[12]);
            foreach (var p in new[] { soup[i], soup[i + 1], soup[i + 2] })
            {
                writer.Write(p.X);
                writer.Write(p.Y);
                writer.Write(p.Z);
            }

            writer.Write((ushort)0);
        }

        writer.Flush();
        return stream.ToArray();
    }

    public static string Ascii(IReadOnlyList<Vec3> soup)
    {
        var text = new StringBuilder("solid a bone of seven words, facet included\n");
        for (var i = 0; i < soup.Count; i += 3)
        {
            text.Append("  facet normal 0 0 0\n    outer loop\n");
            foreach (var p in new[] { soup[i], soup[i + 1], soup[i + 2] })
            {
                text.Append(CultureInfo.InvariantCulture, $"      vertex {p.X:R} {p.Y:E8} {p.Z:R}\n");
            }

            text.Append("    endloop\n  endfacet\n");
        }

        return text.Append("endsolid a bone of seven words, facet included\n").ToString();
    }
}
