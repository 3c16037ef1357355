namespace ElbowAssist.Phantom.Rendering;

/// <summary>
/// Path length of every material along the ray of every pixel, before any X-ray is simulated. Arrays are row by row,
/// <c>index = y * Width + x</c>; lengths in millimetres along the ray.
/// </summary>
public sealed class PathImage
{
    /// <summary>An image of zero path lengths.</summary>
    /// <param name="width">Columns, positive.</param>
    /// <param name="height">Rows, positive.</param>
    /// <exception cref="ArgumentOutOfRangeException">A size is not positive.</exception>
    public PathImage(int width, int height)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(width);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(height);
        Width = width;
        Height = height;
        Soft = new float[width * height];
        Fat = new float[width * height];
        Bone = new float[width * height];
        Metal = new float[width * height];
        Cast = new float[width * height];
        Labels = new byte[width * height];
    }

    /// <summary>Columns.</summary>
    public int Width { get; }

    /// <summary>Rows.</summary>
    public int Height { get; }

    /// <summary>Muscle-like tissue: muscle, skin, cartilage, fluid and the water-like part of bone and marrow.</summary>
    public float[] Soft { get; }

    /// <summary>Fat.</summary>
    public float[] Fat { get; }

    /// <summary>Compact bone; spongy bone counts its bone volume fraction, the rest of it is <see cref="Soft"/>.</summary>
    public float[] Bone { get; }

    /// <summary>Metal.</summary>
    public float[] Metal { get; }

    /// <summary>Plaster or glass fibre of a cast or splint.</summary>
    public float[] Cast { get; }

    /// <summary>Bones whose outer path exceeds 0.8 mm, as <see cref="BoneLabels"/> bits.</summary>
    public byte[] Labels { get; }

    /// <summary>The image of the same things, every path longer by a factor.</summary>
    internal PathImage Lengthened(float factor)
    {
        var image = new PathImage(Width, Height);
        Labels.CopyTo(image.Labels, 0);
        (float[] From, float[] To)[] materials =
            [(Soft, image.Soft), (Fat, image.Fat), (Bone, image.Bone), (Metal, image.Metal), (Cast, image.Cast)];
        foreach (var (from, to) in materials)
        {
            for (var i = 0; i < from.Length; i++)
            {
                to[i] = from[i] * factor;
            }
        }

        return image;
    }
}
