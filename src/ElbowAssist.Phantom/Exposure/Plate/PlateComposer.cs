using ElbowAssist.Phantom.Exposure.Field;
using ElbowAssist.Phantom.Exposure.Settings;
using ElbowAssist.Phantom.NearMiss;
using ElbowAssist.Phantom.NearMiss.Rendering;
using ElbowAssist.Phantom.Rendering;

namespace ElbowAssist.Phantom.Exposure.Plate;

/// <summary>Adds to a projection what else lies on the plate: a helper's hand, a second film.</summary>
internal static class PlateComposer
{
    /// <summary>The projection with everything on the plate; the same instance if there is nothing to add.</summary>
    /// <param name="paths">Projection of the elbow.</param>
    /// <param name="pixelMm">Size of a pixel.</param>
    /// <param name="settings">What to add.</param>
    /// <param name="second">Makes the projection of the second film, of the same size; called only if there is one.</param>
    public static PathImage Compose(PathImage paths, double pixelMm, ExposureSettings settings, Func<PathImage> second)
    {
        if (settings.Hand is null && settings.Second is null)
        {
            return paths;
        }

        var plate = Copy(paths);
        if (settings.Hand is { } hand)
        {
            Add(plate, NearMissRenderer.Render(HandSampler.Model(hand, settings.NoiseSeed, pixelMm, plate.Width, plate.Height), plate.Width, plate.Height));
        }

        if (settings.Second is not null)
        {
            Insert(plate, second(), new ExposedField(settings, plate.Width, plate.Height, pixelMm));
        }

        return plate;
    }

    private static PathImage Copy(PathImage from)
    {
        var to = new PathImage(from.Width, from.Height);
        foreach (var (source, target) in Planes(from).Zip(Planes(to)))
        {
            Array.Copy(source, target, source.Length);
        }

        Array.Copy(from.Labels, to.Labels, from.Labels.Length);
        return to;
    }

    private static void Add(PathImage plate, PathImage other)
    {
        foreach (var (target, source) in Planes(plate).Zip(Planes(other)))
        {
            for (var i = 0; i < target.Length; i++)
            {
                target[i] += source[i];
            }
        }
    }

    private static void Insert(PathImage plate, PathImage other, ExposedField field)
    {
        var targets = Planes(plate);
        var sources = Planes(other);
        for (var y = 0; y < plate.Height; y++)
        {
            for (var x = 0; x < plate.Width; x++)
            {
                if (field.Plate(x + 0.5, y + 0.5) != PlateArea.First)
                {
                    var (fromX, fromY) = field.SecondPlace(x, y);
                    var at = (y * plate.Width) + x;
                    for (var p = 0; p < targets.Length; p++)
                    {
                        targets[p][at] = sources[p][(fromY * plate.Width) + fromX];
                    }

                    plate.Labels[at] = 0;
                }
            }
        }
    }

    private static float[][] Planes(PathImage image) => [image.Soft, image.Fat, image.Bone, image.Metal, image.Cast];
}
