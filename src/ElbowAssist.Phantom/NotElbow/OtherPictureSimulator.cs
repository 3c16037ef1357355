using ElbowAssist.Anatomy;
using ElbowAssist.Geometry;
using ElbowAssist.Phantom.Exposure;
using ElbowAssist.Phantom.Exposure.Plate;
using ElbowAssist.Phantom.Exposure.Sampling;
using ElbowAssist.Phantom.NearMiss;
using ElbowAssist.Phantom.NearMiss.Rendering;
using ElbowAssist.Phantom.NotRadiograph;
using ElbowAssist.Phantom.Pose;
using ElbowAssist.Phantom.Rendering;
using ElbowAssist.Phantom.Sampling;

namespace ElbowAssist.Phantom.NotElbow;

/// <summary>
/// Simulates pictures that a reader must not measure on: films of other body regions and of an arm with the elbow off the
/// film, exposed as films of elbows are, and pictures that are no radiographs. An instance keeps its buffers: use one per thread.
/// </summary>
public sealed class OtherPictureSimulator
{
    private const ulong Stream = 0x4F50;
    private const double ShareBesideElbow = 0.12;
    private readonly FilmExposure exposure = new();

    /// <summary>A film of bones that are no elbow.</summary>
    /// <param name="seed">Seed.</param>
    /// <param name="size">Pixels along each side, 64 to 4096.</param>
    /// <param name="adequacy">How well it is exposed.</param>
    /// <exception cref="ArgumentOutOfRangeException">The size is outside its range.</exception>
    public OtherPicture NearMiss(ulong seed, int size, Adequacy adequacy)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(size, 64);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(size, 4096);
        var random = new CounterRandom(seed, Stream);
        var (shows, paths, pixelMm) = random.Chance(ShareBesideElbow) ? BesideElbow(seed, size) : Region(seed, size);
        var settings = ExposureSampler.Sample(random, adequacy, Content(random, paths, pixelMm));
        var plate = PlateComposer.Compose(paths, pixelMm, settings, () => Region(~seed, size).Paths);
        return new OtherPicture(seed, shows, exposure.Expose(plate, pixelMm, settings), size, pixelMm);
    }

    /// <summary>A picture that is no radiograph.</summary>
    /// <param name="seed">Seed.</param>
    /// <param name="size">Pixels along each side, 64 to 4096.</param>
    /// <exception cref="ArgumentOutOfRangeException">The size is outside its range.</exception>
    public static OtherPicture NotRadiograph(ulong seed, int size)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(size, 64);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(size, 4096);
        var kind = PlainImages.Kind(seed);
        return new OtherPicture(seed, OtherPicture.Words(kind), PlainImages.Make(seed, size, kind), size, null);
    }

    private static (string Shows, PathImage Paths, double PixelMm) Region(ulong seed, int size)
    {
        var (model, region, pixelMm) = NearMissSampler.Sample(seed, size);
        return (OtherPicture.Words(region), NearMissRenderer.Render(model, size, size), pixelMm);
    }

    private static (string Shows, PathImage Paths, double PixelMm) BesideElbow(ulong seed, int size)
    {
        var setup = FilmSetup.NearMiss(seed, size);
        return ("arm-beside-elbow", setup.Render(), setup.PixelMillimetres);
    }

    /// <summary>The field holds the middle of the film; the words on it are those of films of elbows.</summary>
    private static FilmContent Content(CounterRandom random, PathImage paths, double pixelMm)
    {
        var middle = new Point(paths.Width / 2.0, paths.Height / 2.0);
        var reach = random.Uniform(0.15, 0.35) * paths.Width;
        var view = random.Chance(0.4) ? View.Lateral : random.Chance(0.7) ? View.Ap : View.Oblique;
        return new FilmContent(
            paths,
            view,
            random.Chance(0.5) ? Side.Left : Side.Right,
            [middle, middle + new Vector(reach, 0), middle + new Vector(0, reach)],
            middle,
            0.08 * paths.Width,
            pixelMm);
    }
}
