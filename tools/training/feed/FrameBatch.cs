using ElbowAssist.Anatomy;
using ElbowAssist.Phantom;
using ElbowAssist.Phantom.Rendering.Field;
using ElbowAssist.Phantom.Truth;

namespace ElbowAssist.Feed;

/// <summary>The films of one frame before they are rendered.</summary>
/// <param name="View">View, or null for near misses.</param>
/// <param name="Geometries">What the kernel reads.</param>
/// <param name="Truths">What is known of each film; null for near misses.</param>
/// <param name="Seeds">Seed of each film.</param>
internal sealed record FrameBatch(View? View, ElbowGeometry[] Geometries, FilmTruth?[] Truths, ulong[] Seeds)
{
    public static FrameBatch Prepare(FeedOptions options, View? view, ulong firstSeed, int films)
    {
        var geometries = new ElbowGeometry[films];
        var truths = new FilmTruth?[films];
        var seeds = new ulong[films];
        Parallel.For(0, films, new ParallelOptions { MaxDegreeOfParallelism = options.Threads }, i =>
        {
            seeds[i] = firstSeed + ((ulong)i * options.Step);
            if (view is null)
            {
                geometries[i] = FilmSetup.NearMiss(seeds[i], options.Size).Geometry;
                return;
            }

            var setup = FilmSetup.ForTraining(seeds[i], view.Value, options.Size, options.Crop);
            geometries[i] = setup.Geometry;
            truths[i] = setup.Truth();
        });
        return new FrameBatch(view, geometries, truths, seeds);
    }
}
