using ElbowAssist.Geometry;
using OpenCvSharp;

namespace ElbowAssist.Imaging.Normalisation;

/// <summary>Samples a reduced film onto the grid of a crop and standardises it.</summary>
internal static class CropSampler
{
    public static void Standardised(
        NormalisedFilm film, FilmLevel level, Similarity filmToCrop, int width, int height, Span<float> target)
    {
        if (target.Length < (long)width * height)
        {
            throw new ArgumentException("The target must hold width × height values.", nameof(target));
        }

        var dark = film.Polarity.BoneIsDark;
        var cropToFilm = filmToCrop.Inverse;
        using var source = Mat.FromPixelData(level.Height, level.Width, MatType.CV_16UC1, level.Samples);
        using var sampled = new Mat(height, width, MatType.CV_16UC1);
        using var map = IndexMap(cropToFilm, level);
        Cv2.WarpAffine(
            source, sampled, map, new Size(width, height), InterpolationFlags.Linear | InterpolationFlags.WarpInverseMap,
            BorderTypes.Constant, new Scalar(dark ? ushort.MaxValue : 0));
        var window = CropWindow.Of(Values(sampled, width * height), width, cropToFilm, film);
        GreyStandard.ToUnit(Values(sampled, width * height), window, dark, target);
        GreyStandard.Standardise(target[..(width * height)]);
    }

    /// <summary>
    /// From the index of a crop pixel to the index of a level pixel. Indices count pixel centres, so half a pixel is
    /// added before the similarity and taken away after the reduction.
    /// </summary>
    private static Mat IndexMap(Similarity cropToFilm, FilmLevel level)
    {
        var origin = cropToFilm.Apply(new Geometry.Point(0.5, 0.5));
        var right = cropToFilm.Apply(new Vector(1, 0));
        var down = cropToFilm.Apply(new Vector(0, 1));
        var map = new Mat(2, 3, MatType.CV_64FC1);
        map.Set(0, 0, right.X / level.ScaleX);
        map.Set(0, 1, down.X / level.ScaleX);
        map.Set(0, 2, (origin.X / level.ScaleX) - 0.5);
        map.Set(1, 0, right.Y / level.ScaleY);
        map.Set(1, 1, down.Y / level.ScaleY);
        map.Set(1, 2, (origin.Y / level.ScaleY) - 0.5);
        return map;
    }

    private static unsafe ReadOnlySpan<ushort> Values(Mat sampled, int count) => new(sampled.DataPointer, count);
}
