using System.Globalization;
using ElbowAssist.Phantom.Rendering.Field;

namespace ElbowAssist.Phantom.Mesh.Surfaces;

/// <summary>A surface of triangles that share their corners; millimetres.</summary>
internal sealed class TriangleMesh
{
    private readonly Vec3[] vertices;
    private readonly int[] corners;

    /// <param name="vertices">Places.</param>
    /// <param name="corners">Three vertex numbers per triangle, counter-clockwise seen from outside.</param>
    public TriangleMesh(Vec3[] vertices, int[] corners) => (this.vertices, this.corners) = (vertices, corners);

    public IReadOnlyList<Vec3> Vertices => vertices;

    public int TriangleCount => corners.Length / 3;

    /// <summary>Joins corners that lie at the same place and leaves out triangles that have no area because of it.</summary>
    /// <param name="soup">Three corners per triangle.</param>
    public static TriangleMesh Weld(IReadOnlyList<Vec3> soup)
    {
        var numbers = new Dictionary<Vec3, int>();
        var places = new List<Vec3>();
        var joined = new List<int>();
        for (var i = 0; i + 2 < soup.Count; i += 3)
        {
            int a = Number(soup[i]), b = Number(soup[i + 1]), c = Number(soup[i + 2]);
            if (a != b && b != c && c != a)
            {
                joined.AddRange([a, b, c]);
            }
        }

        return new TriangleMesh([.. places], [.. joined]);

        int Number(Vec3 p)
        {
            // Adding zero turns a negative zero into a positive one.
            var place = new Vec3(p.X + 0f, p.Y + 0f, p.Z + 0f);
            if (!numbers.TryGetValue(place, out var number))
            {
                number = places.Count;
                numbers.Add(place, number);
                places.Add(place);
            }

            return number;
        }
    }

    public (Vec3 A, Vec3 B, Vec3 C) Triangle(int index) =>
        (vertices[corners[3 * index]], vertices[corners[(3 * index) + 1]], vertices[corners[(3 * index) + 2]]);

    /// <summary>
    /// Null if the surface is closed and turned one way: along every edge as many triangles run one way as the other.
    /// Otherwise one clause that says what is wrong.
    /// </summary>
    public string? WhyNotClosed()
    {
        var balance = new Dictionary<(int, int), int>();
        for (var i = 0; i < corners.Length; i += 3)
        {
            Count(corners[i], corners[i + 1]);
            Count(corners[i + 1], corners[i + 2]);
            Count(corners[i + 2], corners[i]);
        }

        var open = balance.Values.Count(v => v != 0);
        return open == 0
            ? null
            : string.Create(CultureInfo.InvariantCulture, $"its surface is not closed ({open} of {balance.Count} edges do not join two triangles turned the same way)");

        void Count(int from, int to)
        {
            var key = from < to ? (from, to) : (to, from);
            balance[key] = balance.GetValueOrDefault(key) + (from < to ? 1 : -1);
        }
    }

    /// <summary>Enclosed volume, negative if the triangles are turned inside out; mm³.</summary>
    public double Volume()
    {
        var sum = 0.0;
        var origin = vertices[0];
        for (var i = 0; i < TriangleCount; i++)
        {
            var (a, b, c) = Triangle(i);
            sum += (a - origin).Dot((b - origin).Cross(c - origin));
        }

        return sum / 6;
    }

    /// <summary>The same surface with its triangles turned the other way.</summary>
    public TriangleMesh Reversed()
    {
        var turned = (int[])corners.Clone();
        for (var i = 0; i < turned.Length; i += 3)
        {
            (turned[i + 1], turned[i + 2]) = (turned[i + 2], turned[i + 1]);
        }

        return new TriangleMesh(vertices, turned);
    }

    /// <summary>The surface with every corner moved by a rigid motion, or by one and a scaling.</summary>
    public TriangleMesh Moved(Func<Vec3, Vec3> motion) => new([.. vertices.Select(motion)], corners);

    /// <summary>The mirror image across the plane X = 0; the outside stays outside.</summary>
    public TriangleMesh Mirrored() => Moved(p => new Vec3(-p.X, p.Y, p.Z)).Reversed();
}
