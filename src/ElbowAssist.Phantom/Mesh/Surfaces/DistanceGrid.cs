using ElbowAssist.Phantom.Rendering.Field;

namespace ElbowAssist.Phantom.Mesh.Surfaces;

/// <summary>Signed distances to a surface (negative inside) at the nodes of a regular grid, linear in between; millimetres.</summary>
internal sealed class DistanceGrid
{
    private readonly Vec3 origin;
    private readonly float step;
    private readonly float inverse;
    private readonly int nx;
    private readonly int ny;
    private readonly int nz;
    private readonly float[] values;
    private readonly float margin;

    /// <param name="origin">Place of node (0, 0, 0).</param>
    /// <param name="step">Distance between nodes.</param>
    /// <param name="nx">Nodes along X, which run fastest; likewise along Y and Z.</param>
    /// <param name="ny">Nodes along Y.</param>
    /// <param name="nz">Nodes along Z.</param>
    /// <param name="values">Distances.</param>
    /// <param name="margin">Least distance of the surface from the border of the grid.</param>
    public DistanceGrid(Vec3 origin, float step, int nx, int ny, int nz, float[] values, float margin)
    {
        (this.origin, this.step, this.nx, this.ny, this.nz, this.values, this.margin) = (origin, step, nx, ny, nz, values, margin);
        inverse = 1 / step;
        Least = origin;
        Most = origin + new Vec3((nx - 1) * step, (ny - 1) * step, (nz - 1) * step);
    }

    /// <summary>Corners of the box that the grid fills; the surface lies inside.</summary>
    public Vec3 Least { get; }

    public Vec3 Most { get; }

    /// <summary>Signed distance; outside the grid never more than the true one.</summary>
    public float At(Vec3 p)
    {
        var q = new Vec3(
            Distance.Clamp(p.X, Least.X, Most.X), Distance.Clamp(p.Y, Least.Y, Most.Y), Distance.Clamp(p.Z, Least.Z, Most.Z));
        var outside = (p - q).Length;
        return outside > 0 ? outside + margin : Inside(q);
    }

    private float Inside(Vec3 p)
    {
        var g = (p - origin) * inverse;
        int i = Math.Min((int)g.X, nx - 2), j = Math.Min((int)g.Y, ny - 2), k = Math.Min((int)g.Z, nz - 2);
        float x = g.X - i, y = g.Y - j, z = g.Z - k;
        var at = (((k * ny) + j) * nx) + i;
        var above = at + (nx * ny);
        var near = Distance.Mix(
            Distance.Mix(values[at], values[at + 1], x), Distance.Mix(values[at + nx], values[at + nx + 1], x), y);
        var far = Distance.Mix(
            Distance.Mix(values[above], values[above + 1], x), Distance.Mix(values[above + nx], values[above + nx + 1], x), y);
        return Distance.Mix(near, far, z);
    }
}
