using ElbowAssist.Phantom.Rendering.Field;
using ElbowAssist.Phantom.Truth;

namespace ElbowAssist.Phantom.Tests.Mesh;

/// <summary>Triangles of the surface on which a distance is 0: every cell of a grid is cut into six tetrahedra.</summary>
internal static class Isosurface
{
    /// <summary>The six paths from corner 0 to corner 7 of a cube along its edges; corners are numbered by their bits.</summary>
    private static readonly int[][] Tetrahedra = [[0, 1, 3, 7], [0, 3, 2, 7], [0, 2, 6, 7], [0, 6, 4, 7], [0, 4, 5, 7], [0, 5, 1, 7]];

    /// <summary>Three corners per triangle, turned outside out.</summary>
    public static List<Vec3> Of(Surface distance, Vec3 least, Vec3 most, float step)
    {
        int nx = Count(least.X, most.X), ny = Count(least.Y, most.Y), nz = Count(least.Z, most.Z);
        var values = new float[nx, ny, nz];
        Parallel.For(0, nx, i =>
        {
            for (var j = 0; j < ny; j++)
            {
                for (var k = 0; k < nz; k++)
                {
                    values[i, j, k] = distance(Place(i, j, k));
                }
            }
        });
        var soup = new List<Vec3>();
        for (var i = 0; i + 1 < nx; i++)
        {
            for (var j = 0; j + 1 < ny; j++)
            {
                for (var k = 0; k + 1 < nz; k++)
                {
                    if (!Crossed(i, j, k))
                    {
                        continue;
                    }

                    foreach (var corners in Tetrahedra)
                    {
                        Cut([.. corners.Select(c => (Place(i + (c & 1), j + ((c >> 1) & 1), k + (c >> 2)), values[i + (c & 1), j + ((c >> 1) & 1), k + (c >> 2)]))]);
                    }
                }
            }
        }

        return soup;

        bool Crossed(int i, int j, int k)
        {
            var inside = values[i, j, k] < 0;
            for (var c = 1; c < 8; c++)
            {
                if (values[i + (c & 1), j + ((c >> 1) & 1), k + (c >> 2)] < 0 != inside)
                {
                    return true;
                }
            }

            return false;
        }

        int Count(float from, float to) => (int)MathF.Ceiling((to - from) / step) + 1;

        Vec3 Place(int i, int j, int k) => least + new Vec3(i * step, j * step, k * step);

        void Cut((Vec3 P, float D)[] corners)
        {
            var inside = corners.Where(c => c.D < 0).ToArray();
            var outside = corners.Where(c => c.D >= 0).ToArray();
            var away = outside.Length * inside.Length == 0 ? default : Middle(outside) - Middle(inside);
            if (inside.Length == 1 || outside.Length == 1)
            {
                var (one, rest) = inside.Length == 1 ? (inside[0], outside) : (outside[0], inside);
                Add(Crossing(one, rest[0]), Crossing(one, rest[1]), Crossing(one, rest[2]), away);
            }
            else if (inside.Length == 2)
            {
                Vec3 a = Crossing(inside[0], outside[0]), b = Crossing(inside[0], outside[1]);
                Vec3 c = Crossing(inside[1], outside[1]), d = Crossing(inside[1], outside[0]);
                Add(a, b, c, away);
                Add(a, c, d, away);
            }
        }

        void Add(Vec3 a, Vec3 b, Vec3 c, Vec3 away) => soup.AddRange((b - a).Cross(c - a).Dot(away) > 0 ? [a, b, c] : [a, c, b]);
    }

    private static Vec3 Middle((Vec3 P, float D)[] corners) =>
        corners.Aggregate(default(Vec3), (sum, c) => sum + c.P) * (1f / corners.Length);

    /// <summary>The same from either side, so that neighbours share their corners to the last bit.</summary>
    private static Vec3 Crossing((Vec3 P, float D) one, (Vec3 P, float D) other)
    {
        var (low, high) = one.D < other.D ? (one, other) : (other, one);
        var share = Math.Clamp(-low.D / (high.D - low.D), 0.02f, 0.98f);
        return low.P + ((high.P - low.P) * share);
    }
}
