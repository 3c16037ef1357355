using ElbowAssist.Phantom.Mesh.Rendering;
using ElbowAssist.Phantom.Rendering.Field;

namespace ElbowAssist.Phantom.Rendering;

/// <summary>Renders path images on the CPU.</summary>
internal static class FilmRenderer
{
    /// <summary>Renders parametric bones, or meshes that stand in for them.</summary>
    public static PathImage Render(in ElbowGeometry geometry, int width, int height, MeshBones? bones = null)
    {
        var image = new PathImage(width, height);
        var shared = new[] { geometry };
        var limb = LimbGrid.Of(shared, width, height);
        var high = limb.BandHeight;
        Parallel.For(
            0,
            (height + high - 1) / high,
            () => new LimbPath[limb.Stride * high],
            (band, _, around) =>
            {
                limb.Fill(in shared[0], band, around);
                for (var y = band * high; y < Math.Min((band + 1) * high, height); y++)
                {
                    Row(in shared[0], bones, around.AsSpan((y - (band * high)) * limb.Stride), image, y);
                }

                return around;
            },
            _ => { });
        return image;
    }

    private static void Row(in ElbowGeometry geometry, MeshBones? bones, ReadOnlySpan<LimbPath> around, PathImage image, int y)
    {
        for (var x = 0; x < image.Width; x++)
        {
            var paths = bones is null
                ? RayIntegrator.Trace(in geometry, x + 0.5f, y + 0.5f, in around[x])
                : MeshIntegrator.Trace(in geometry, bones, x + 0.5f, y + 0.5f, in around[x]);
            var i = (y * image.Width) + x;
            image.Soft[i] = paths.Soft;
            image.Fat[i] = paths.Fat;
            image.Bone[i] = paths.Bone;
            image.Metal[i] = paths.Metal;
            image.Cast[i] = paths.Cast;
            image.Labels[i] = paths.Labels;
        }
    }
}
