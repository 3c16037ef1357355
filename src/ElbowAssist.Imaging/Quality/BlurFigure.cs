using System.Buffers;
using System.Runtime.CompilerServices;
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

    /// <summary>Pixels of the box before its middle.</summary>
    private const int Before = Box / 2;

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
            var line = level.Samples.AsSpan(row * level.Width, level.Width);
            var box = 0;
            foreach (var value in line[..Box])
            {
                box += value;
            }

            for (var i = 1; i + Box <= line.Length; i++)
            {
                Step(line[i - 1], line[i + Before - 1], line[i + Before], line[i + Box - 1], ref box, ref before, ref lost);
            }
        }

        return Figure(before, lost);
    }

    /// <summary>All columns together row by row, as they lie in memory.</summary>
    private static double AlongColumns(FilmLevel level)
    {
        var width = level.Width;
        using IMemoryOwner<int> rented = MemoryPool<int>.Shared.Rent(width);
        var boxes = rented.Memory.Span[..width];
        boxes.Clear();
        for (var row = 0; row < Box; row++)
        {
            var line = level.Samples.AsSpan(row * width, width);
            for (var column = 1; column < width; column += LineStep)
            {
                boxes[column] += line[column];
            }
        }

        long before = 0, lost = 0;
        for (var i = 1; i + Box <= level.Height; i++)
        {
            ReadOnlySpan<ushort> Row(int row) => level.Samples.AsSpan(row * width, width);
            ReadOnlySpan<ushort> leaving = Row(i - 1), previous = Row(i + Before - 1), here = Row(i + Before), entering = Row(i + Box - 1);
            for (var column = 1; column < width; column += LineStep)
            {
                Step(leaving[column], previous[column], here[column], entering[column], ref boxes[column], ref before, ref lost);
            }
        }

        return Figure(before, lost);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Step(int leaving, int previous, int here, int entering, ref int box, ref long before, ref long lost)
    {
        var difference = Math.Abs(here - previous);
        var next = box - leaving + entering;
        var blurred = Math.Abs(next - box) / Box;
        box = next;
        before += difference;
        lost += Math.Max(0, difference - blurred);
    }

    private static double Figure(long before, long lost) => before == 0 ? 1 : (double)(before - lost) / before;
}
