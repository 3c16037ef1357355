using ElbowAssist.Phantom.Rendering.Field;

namespace ElbowAssist.Phantom.Rendering;

/// <summary>Renders path images on the CPU.</summary>
internal static class FilmRenderer
{
    public static PathImage Render(in ElbowGeometry geometry, int width, int height)
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
                    Row(in shared[0], around.AsSpan((y - (band * high)) * limb.Stride), image, y);
                }

                return around;
            },
            _ => { });
        return image;
    }

    private static void Row(in ElbowGeometry geometry, ReadOnlySpan<LimbPath> around, PathImage image, int y)
    {
        for (var x = 0; x < image.Width; x++)
        {
            var paths = RayIntegrator.Trace(in geometry, x + 0.5f, y + 0.5f, in around[x]);
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
