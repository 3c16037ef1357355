using ElbowAssist.Anatomy;
using ElbowAssist.Phantom;
using ElbowAssist.Phantom.NearMiss;
using ElbowAssist.Phantom.NearMiss.Rendering;
using ElbowAssist.Phantom.Rendering.Field;
using ElbowAssist.Phantom.Sampling;
using ElbowAssist.Phantom.Truth;

namespace ElbowAssist.Feed;

/// <summary>The films of one frame before they are rendered.</summary>
/// <param name="View">View, or null for near misses.</param>
/// <param name="Geometries">What the kernel reads; empty for scenes of other body regions.</param>
/// <param name="NearMisses">Scenes of other body regions; empty for elbows.</param>
/// <param name="Truths">What is known of each film; null for near misses.</param>
/// <param name="PixelMm">Size of a pixel of each film in the object plane.</param>
/// <param name="Seeds">Seed of each film.</param>
internal sealed record FrameBatch(
    View? View, ElbowGeometry[] Geometries, NearMissModel[] NearMisses, FilmTruth?[] Truths, float[] PixelMm, ulong[] Seeds)
{
    private const ulong NearMissStream = 98;
    private const double ShareBesideElbow = 0.15;

    /// <summary>Number of films.</summary>
    public int Count => Seeds.Length;

    public static FrameBatch Prepare(FeedOptions options, View? view, ulong firstSeed, int films)
    {
        // Most near misses are other body regions; some are films of an arm with the elbow off the film.
        if (view is null && !new CounterRandom(firstSeed, NearMissStream).Chance(ShareBesideElbow))
        {
            return OtherRegions(options, firstSeed, films);
        }

        var geometries = new ElbowGeometry[films];
        var truths = new FilmTruth?[films];
        var pixels = new float[films];
        var seeds = new ulong[films];
        Parallel.For(0, films, new ParallelOptions { MaxDegreeOfParallelism = options.Threads }, i =>
        {
            seeds[i] = firstSeed + ((ulong)i * options.Step);
            if (view is null)
            {
                var beside = FilmSetup.NearMiss(seeds[i], options.Size);
                geometries[i] = beside.Geometry;
                pixels[i] = (float)beside.Placement.PixelMillimetres;
                return;
            }

            var setup = FilmSetup.ForTraining(seeds[i], view.Value, options.Size, options.Crop);
            geometries[i] = setup.Geometry;
            geometries[i].SolidBones = options.SolidBones ? 1 : 0;
            truths[i] = setup.Truth();
            pixels[i] = (float)setup.Placement.PixelMillimetres;
        });
        return new FrameBatch(view, geometries, [], truths, pixels, seeds);
    }

    private static FrameBatch OtherRegions(FeedOptions options, ulong firstSeed, int films)
    {
        var models = new NearMissModel[films];
        var pixels = new float[films];
        var seeds = new ulong[films];
        for (var i = 0; i < films; i++)
        {
            seeds[i] = firstSeed + ((ulong)i * options.Step);
            (models[i], _, pixels[i]) = NearMissSampler.Sample(seeds[i], options.Size);
        }

        return new FrameBatch(null, [], models, new FilmTruth?[films], pixels, seeds);
    }
}
