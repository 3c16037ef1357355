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

    /// <summary>0 to 1; 1 for a film without any structure.</summary>
    public static double Of(Radiograph film, FilmLevel overview)
    {
        var factor = (Math.Max(film.Width, film.Height) + Side - 1) / Side;
        using var reduced = FilmLevel.Reduce(film, factor);
        return Of(reduced.Width < Box + 2 || reduced.Height < Box + 2 ? overview : reduced);
    }

    /// <summary>The same on one level; 1 where it is smaller than the box.</summary>
    public static double Of(FilmLevel level) =>
        level.Width < Box + 2 || level.Height < Box + 2
            ? 1
            : Math.Max(Along(level, 1, level.Width, level.Height, level.Width), Along(level, level.Width, level.Height, level.Width, 1));

    private static double Along(FilmLevel level, int step, int length, int lines, int lineStep)
    {
        long before = 0, lost = 0;
        for (var line = 1; line < lines; line += 4)
        {
            var start = line * lineStep;
            long box = 0;
            for (var i = 0; i < Box; i++)
            {
                box += level.Samples[start + (i * step)];
            }

            for (var i = 1; i + Box <= length; i++)
            {
                var at = start + ((i + (Box / 2)) * step);
                var difference = Math.Abs(level.Samples[at] - level.Samples[at - step]);
                var next = box - level.Samples[start + ((i - 1) * step)] + level.Samples[start + ((i + Box - 1) * step)];
                var blurred = Math.Abs(next - box) / Box;
                box = next;
                before += difference;
                lost += Math.Max(0, difference - blurred);
            }
        }

        return before == 0 ? 1 : (double)(before - lost) / before;
    }
}
