using ElbowAssist.Geometry;

namespace ElbowAssist.Imaging.Normalisation;

/// <summary>
/// The grey window of the exposed field as far as a crop shows it, which is how films are standardised in training.
/// </summary>
internal static class CropWindow
{
    /// <summary>A crop with fewer pixels of the field, or a flatter range, takes the window of the film.</summary>
    private const double LeastShare = 0.01;
    private const double LeastRange = 0.02;

    public static GreyWindow Of(ReadOnlySpan<ushort> sampled, int width, Similarity cropToFilm, NormalisedFilm film)
    {
        var field = film.Field;
        var origin = cropToFilm.Apply(new Point(0.5, 0.5));
        var right = cropToFilm.Apply(new Vector(1, 0));
        var down = cropToFilm.Apply(new Vector(0, 1));
        using var histogram = new GreyHistogram();
        var count = 0;
        for (var row = 0; row * width < sampled.Length; row++)
        {
            var line = sampled.Slice(row * width, width);
            // Along a row both coordinates only rise or only fall: with its ends all of it lies inside.
            if (Inside(0, row) && Inside(width - 1, row))
            {
                histogram.Add(line);
                count += width;
                continue;
            }

            for (var column = 0; column < width; column++)
            {
                if (Inside(column, row))
                {
                    histogram.Add(line[column]);
                    count++;
                }
            }
        }

        var window = count < LeastShare * sampled.Length ? film.Window : GreyWindow.From(histogram, count);
        return window.Range < LeastRange * film.Window.Range ? film.Window : window;

        bool Inside(int column, int row)
        {
            var x = origin.X + (column * right.X) + (row * down.X);
            var y = origin.Y + (column * right.Y) + (row * down.Y);
            return x >= field.Left && x < field.Right && y >= field.Top && y < field.Bottom;
        }
    }
}
