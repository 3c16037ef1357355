using ElbowAssist.Phantom.Rendering.Field;

namespace ElbowAssist.Phantom.Mesh.Surfaces;

/// <summary>
/// Signed distances on a grid from a closed surface. Near the surface they are distances to triangles; farther away the
/// eikonal equation is solved by fast sweeping (Zhao, Math. Comp. 2005;74:603). A node is inside if a line along X has
/// crossed the surface an odd number of times before it.
/// </summary>
internal sealed class DistanceGridBuilder
{
    private const float ExactSteps = 2.5f;
    private readonly TriangleMesh mesh;
    private readonly Vec3 origin;
    private readonly float step;
    private readonly float margin;
    private readonly int nx;
    private readonly int ny;
    private readonly int nz;
    private readonly float[] values;

    private DistanceGridBuilder(TriangleMesh mesh, float step, float margin)
    {
        (this.mesh, this.step, this.margin) = (mesh, step, margin);
        var (least, most) = Bounds(mesh);
        origin = least - new Vec3(margin, margin, margin);
        var size = most - least + new Vec3(2 * margin, 2 * margin, 2 * margin);
        nx = (int)MathF.Ceiling(size.X / step) + 1;
        ny = (int)MathF.Ceiling(size.Y / step) + 1;
        nz = (int)MathF.Ceiling(size.Z / step) + 1;
        values = new float[checked(nx * ny * nz)];
    }

    /// <summary>Distances to a closed surface.</summary>
    /// <param name="mesh">Surface.</param>
    /// <param name="step">Distance between nodes.</param>
    /// <param name="margin">How far the grid reaches beyond the surface.</param>
    public static DistanceGrid Build(TriangleMesh mesh, float step, float margin)
    {
        var builder = new DistanceGridBuilder(mesh, step, margin);
        Parallel.For(0, builder.nz, builder.ExactLayer);
        builder.Sweep();
        Parallel.For(0, builder.nz, builder.SignLayer);
        return new DistanceGrid(builder.origin, step, builder.nx, builder.ny, builder.nz, builder.values, margin);
    }

    private static (Vec3 Least, Vec3 Most) Bounds(TriangleMesh mesh)
    {
        Vec3 least = mesh.Vertices[0], most = least;
        foreach (var p in mesh.Vertices)
        {
            least = new Vec3(MathF.Min(least.X, p.X), MathF.Min(least.Y, p.Y), MathF.Min(least.Z, p.Z));
            most = new Vec3(MathF.Max(most.X, p.X), MathF.Max(most.Y, p.Y), MathF.Max(most.Z, p.Z));
        }

        return (least, most);
    }

    /// <summary>Distances to the triangles that come close to a layer of nodes.</summary>
    private void ExactLayer(int k)
    {
        var layer = values.AsSpan(k * nx * ny, nx * ny);
        layer.Fill(float.MaxValue);
        var z = origin.Z + (k * step);
        var band = ExactSteps * step;
        for (var t = 0; t < mesh.TriangleCount; t++)
        {
            var (a, b, c) = mesh.Triangle(t);
            if (MathF.Min(a.Z, MathF.Min(b.Z, c.Z)) > z + band || MathF.Max(a.Z, MathF.Max(b.Z, c.Z)) < z - band)
            {
                continue;
            }

            var (i0, i1) = Range(a.X, b.X, c.X, origin.X, nx);
            var (j0, j1) = Range(a.Y, b.Y, c.Y, origin.Y, ny);
            for (var j = j0; j <= j1; j++)
            {
                for (var i = i0; i <= i1; i++)
                {
                    var p = new Vec3(origin.X + (i * step), origin.Y + (j * step), z);
                    var d = (p - TriangleDistance.Nearest(p, a, b, c)).Length;
                    ref var value = ref layer[(j * nx) + i];
                    value = d <= band ? MathF.Min(value, d) : value;
                }
            }
        }
    }

    private (int From, int To) Range(float a, float b, float c, float from, int count)
    {
        var band = ExactSteps * step;
        var least = (MathF.Min(a, MathF.Min(b, c)) - band - from) / step;
        var most = (MathF.Max(a, MathF.Max(b, c)) + band - from) / step;
        return (Math.Max((int)MathF.Ceiling(least), 0), Math.Min((int)MathF.Floor(most), count - 1));
    }

    private void Sweep()
    {
        var band = ExactSteps * step;
        for (var sweep = 0; sweep < 8; sweep++)
        {
            bool right = (sweep & 1) == 0, up = (sweep & 2) == 0, on = (sweep & 4) == 0;
            for (var kk = 0; kk < nz; kk++)
            {
                var k = on ? kk : nz - 1 - kk;
                for (var jj = 0; jj < ny; jj++)
                {
                    var j = up ? jj : ny - 1 - jj;
                    var row = ((k * ny) + j) * nx;
                    for (var ii = 0; ii < nx; ii++)
                    {
                        var i = right ? ii : nx - 1 - ii;
                        if (values[row + i] > band)
                        {
                            values[row + i] = MathF.Min(values[row + i], Eikonal(
                                Nearer(row + i, 1, i, nx), Nearer(row + i, nx, j, ny), Nearer(row + i, nx * ny, k, nz)));
                        }
                    }
                }
            }
        }
    }

    /// <summary>The smaller of the two neighbours along an axis.</summary>
    private float Nearer(int at, int stride, int index, int count) => MathF.Min(
        index > 0 ? values[at - stride] : float.MaxValue,
        index < count - 1 ? values[at + stride] : float.MaxValue);

    /// <summary>The distance whose upwind differences have a gradient of 1.</summary>
    private float Eikonal(float a, float b, float c)
    {
        var first = MathF.Min(a, MathF.Min(b, c));
        if (first == float.MaxValue)
        {
            return first;
        }

        var third = MathF.Max(a, MathF.Max(b, c));
        var second = MathF.Max(MathF.Min(a, b), MathF.Min(MathF.Max(a, b), c));
        var d = first + step;
        if (d <= second)
        {
            return d;
        }

        var root = (2 * step * step) - ((first - second) * (first - second));
        d = 0.5f * (first + second + MathF.Sqrt(root));
        if (d <= third)
        {
            return d;
        }

        var sum = first + second + third;
        root = (sum * sum) - (3 * ((first * first) + (second * second) + (third * third) - (step * step)));
        return (sum + MathF.Sqrt(MathF.Max(root, 0))) / 3;
    }

    private void SignLayer(int k)
    {
        // Lines that pass a little beside the nodes meet no edge or corner of a mesh made of round numbers.
        var z = origin.Z + (k * step) + (1.37e-4 * step);
        var crossings = new List<double>[ny];
        for (var t = 0; t < mesh.TriangleCount; t++)
        {
            var (a, b, c) = mesh.Triangle(t);
            if (Math.Min(a.Z, Math.Min(b.Z, c.Z)) <= z && Math.Max(a.Z, Math.Max(b.Z, c.Z)) >= z)
            {
                var (j0, j1) = Range(a.Y, b.Y, c.Y, origin.Y, ny);
                for (var j = j0; j <= j1; j++)
                {
                    if (Crossing(a, b, c, origin.Y + (j * step) + (0.71e-4 * step), z) is { } x)
                    {
                        (crossings[j] ??= []).Add(x);
                    }
                }
            }
        }

        for (var j = 0; j < ny; j++)
        {
            if (crossings[j] is { } row)
            {
                row.Sort();
                var passed = 0;
                for (var i = 0; i < nx; i++)
                {
                    while (passed < row.Count && row[passed] < origin.X + (i * step))
                    {
                        passed++;
                    }

                    ref var value = ref values[(((k * ny) + j) * nx) + i];
                    value = (passed & 1) == 1 ? -value : value;
                }
            }
        }
    }

    /// <summary>Where a line along X meets a triangle.</summary>
    private static double? Crossing(Vec3 a, Vec3 b, Vec3 c, double y, double z)
    {
        double ay = a.Y - y, az = a.Z - z, by = b.Y - y, bz = b.Z - z, cy = c.Y - y, cz = c.Z - z;
        double u = (by * cz) - (bz * cy), v = (cy * az) - (cz * ay), w = (ay * bz) - (az * by);
        var sum = u + v + w;
        return sum != 0 && ((u >= 0 && v >= 0 && w >= 0) || (u <= 0 && v <= 0 && w <= 0))
            ? ((u * a.X) + (v * b.X) + (w * c.X)) / sum
            : null;
    }
}
