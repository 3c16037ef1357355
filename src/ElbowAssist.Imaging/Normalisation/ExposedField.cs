namespace ElbowAssist.Imaging.Normalisation;

/// <summary>
/// The part of a film that radiation reached: what is left after taking away, from each side, the rows or columns that
/// show nothing. Film pixels, right and bottom exclusive.
/// </summary>
/// <param name="Left">First column.</param>
/// <param name="Top">First row.</param>
/// <param name="Right">Column after the last.</param>
/// <param name="Bottom">Row after the last.</param>
public readonly record struct ExposedField(int Left, int Top, int Right, int Bottom)
{
    /// <summary>A row shows nothing if 90 % of it lies within this share of the film's range (construction of this project).</summary>
    private const double FeaturelessSpread = 0.02;

    /// <summary>Columns.</summary>
    public int Width => Right - Left;

    /// <summary>Rows.</summary>
    public int Height => Bottom - Top;

    /// <summary>Finds the field on a reduced film.</summary>
    internal static ExposedField Find(FilmLevel level, int filmWidth, int filmHeight)
    {
        using var histogram = new GreyHistogram();
        histogram.Add(level.Values);
        var count = level.Values.Length;
        var tolerance = FeaturelessSpread * (histogram.Percentile(0.99, count) - histogram.Percentile(0.01, count));
        var top = Featureless(level, tolerance, rows: true, fromEnd: false);
        var bottom = Featureless(level, tolerance, rows: true, fromEnd: true);
        var left = Featureless(level, tolerance, rows: false, fromEnd: false);
        var right = Featureless(level, tolerance, rows: false, fromEnd: true);
        if (top + bottom >= level.Height - 2 || left + right >= level.Width - 2)
        {
            return new ExposedField(0, 0, filmWidth, filmHeight);
        }

        return new ExposedField(
            (int)(left * level.ScaleX),
            (int)(top * level.ScaleY),
            filmWidth - (int)(right * level.ScaleX),
            filmHeight - (int)(bottom * level.ScaleY));
    }

    private static int Featureless(FilmLevel level, double tolerance, bool rows, bool fromEnd)
    {
        var count = rows ? level.Height : level.Width;
        var line = new ushort[rows ? level.Width : level.Height];
        for (var i = 0; i < count; i++)
        {
            var index = fromEnd ? count - 1 - i : i;
            for (var j = 0; j < line.Length; j++)
            {
                line[j] = rows ? level.Samples[(index * level.Width) + j] : level.Samples[(j * level.Width) + index];
            }

            Array.Sort(line);
            if (line[(int)((line.Length - 1) * 0.95)] - line[(int)((line.Length - 1) * 0.05)] > tolerance)
            {
                return i;
            }
        }

        return count;
    }
}
