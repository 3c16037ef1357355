using ElbowAssist.Phantom.Mesh.Surfaces;
using ElbowAssist.Phantom.Rendering.Field;

namespace ElbowAssist.Phantom.Tests.Mesh;

/// <summary>Closed surfaces whose distances and chords are known.</summary>
internal static class Bodies
{
    /// <summary>Twelve triangles of a box, three corners each, turned outside out.</summary>
    public static IReadOnlyList<Vec3> Box(Vec3 least, Vec3 most)
    {
        var soup = new List<Vec3>();
        for (var axis = 0; axis < 3; axis++)
        {
            foreach (var far in new[] { false, true })
            {
                Vec3 Corner(bool u, bool v)
                {
                    bool[] side = new bool[3];
                    side[axis] = far;
                    side[(axis + 1) % 3] = u;
                    side[(axis + 2) % 3] = v;
                    return new Vec3(side[0] ? most.X : least.X, side[1] ? most.Y : least.Y, side[2] ? most.Z : least.Z);
                }

                Vec3 a = Corner(false, false), b = Corner(true, false), c = Corner(true, true), d = Corner(false, true);
                soup.AddRange(far ? [a, b, c, a, c, d] : [a, c, b, a, d, c]);
            }
        }

        return soup;
    }

    /// <summary>A ball about the origin, its corners on the sphere.</summary>
    public static TriangleMesh Ball(float radius, int rings)
    {
        var soup = new List<Vec3>();
        for (var i = 0; i < rings; i++)
        {
            for (var j = 0; j < 2 * rings; j++)
            {
                Vec3 a = On(i, j), b = On(i + 1, j), c = On(i + 1, j + 1), d = On(i, j + 1);
                soup.AddRange([a, c, b, a, d, c]);
            }
        }

        return TriangleMesh.Weld(soup);

        Vec3 On(int ring, int sector)
        {
            if (ring == 0 || ring == rings)
            {
                return new Vec3(0, 0, ring == 0 ? radius : -radius);
            }

            var (sin, cos) = Math.SinCos(ring * Math.PI / rings);
            var (across, along) = Math.SinCos(sector % (2 * rings) * Math.PI / rings);
            return new Vec3((float)(radius * sin * along), (float)(radius * sin * across), (float)(radius * cos));
        }
    }
}
