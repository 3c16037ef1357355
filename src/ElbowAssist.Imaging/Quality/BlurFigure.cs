using ElbowAssist.Imaging.Normalisation;

namespace ElbowAssist.Imaging.Quality;

/// <summary>
/// Blur after F. Crété and others, The blur effect: perception and estimation with a new no-reference perceptual blur
/// metric, SPIE 6492 (2007): how little neighbouring pixels differ less after a box blur of nine (reference from memory).
/// </summary>
internal static class BlurFigure
{
    private const int Side = 1024;
    private const int Box = 9;

    private const int Middle = Box / 2;

    /// <summary>Every how many rows or columns is looked along.</summary>
    private const int LineStep = 4;

    /// <summary>0 to 1; 1 for a film without any structure.</summary>
    public static double Of(FilmLevels levels)
    {
        var reduced = levels.Within(Side);
        return Of(reduced.Width < Box + 2 || reduced.Height < Box + 2 ? levels.Within(NormalisedFilm.OverviewSide) : reduced);
    }

    /// <summary>The same on one level; 1 where it is smaller than the box.</summary>
    public static double Of(FilmLevel level) =>
        level.Width < Box + 2 || level.Height < Box + 2 ? 1 : Math.Max(AlongRows(level), AlongColumns(level));

    private static double AlongRows(FilmLevel level)
    {
        long before = 0, lost = 0;
        for (var row = 1; row < level.Height; row += LineStep)
        {
            ReadOnlySpan<ushort> line = level.Samples.AsSpan(row * level.Width, level.Width);
            Add(line[..^Box], line[Middle..], line[(Middle + 1)..], line[Box..], 1, ref before, ref lost);
        }

        return Figure(before, lost);
    }

    /// <summary>All columns together row by row, as they lie in memory.</summary>
    private static double AlongColumns(FilmLevel level)
    {
        long before = 0, lost = 0;
        for (var row = 0; row + Box < level.Height; row++)
        {
            ReadOnlySpan<ushort> Row(int number) => level.Samples.AsSpan((number * level.Width) + 1, level.Width - 1);
            Add(Row(row), Row(row + Middle), Row(row + Middle + 1), Row(row + Box), LineStep, ref before, ref lost);
        }

        return Figure(before, lost);
    }

    /// <summary>
    /// Adds differences of neighbours, and how much smaller they are after the blur: the sum over a box changes from one
    /// place to the next by what enters less what leaves.
    /// </summary>
    private static void Add(
        ReadOnlySpan<ushort> leaving, ReadOnlySpan<ushort> previous, ReadOnlySpan<ushort> here, ReadOnlySpan<ushort> entering, int step, ref long before, ref long lost)
    {
        for (var i = 0; i < leaving.Length; i += step)
        {
            var difference = Math.Abs(here[i] - previous[i]);
            before += difference;
            lost += Math.Max(0, difference - (Math.Abs(entering[i] - leaving[i]) / Box));
        }
    }

    private static double Figure(long before, long lost) => before == 0 ? 1 : (double)(before - lost) / before;
}
