using ElbowAssist.Anatomy;
using ElbowAssist.Geometry;
using ElbowAssist.Phantom.Exposure;
using ElbowAssist.Phantom.Exposure.Field;
using ElbowAssist.Phantom.Exposure.Plate;
using ElbowAssist.Phantom.Exposure.Sampling;
using ElbowAssist.Phantom.Truth;

namespace ElbowAssist.Phantom;

/// <summary>
/// Simulates whole films: patient, projection, exposure, processing. A seed fixes the patient; each view draws from a
/// sub-stream of its own. An instance keeps its buffers: use one per thread.
/// </summary>
public sealed class FilmSimulator
{
    private const int ExposurePurpose = 100;
    private readonly FilmExposure exposure = new();

    /// <summary>Simulates one square film of a drawn patient.</summary>
    /// <param name="seed">Seed of the patient.</param>
    /// <param name="view">Lateral, AP or oblique.</param>
    /// <param name="options">Ages, injuries, adequacy.</param>
    /// <param name="size">Pixels along each side, 64 to 4096.</param>
    /// <exception cref="ArgumentOutOfRangeException">The size is outside its range.</exception>
    public SimulatedFilm Simulate(ulong seed, View view, SimulationOptions options, int size)
    {
        ArgumentNullException.ThrowIfNull(options);
        return Simulate(Simulation.Sample(seed, options), view, options, size);
    }

    /// <summary>Simulates one square film of a patient.</summary>
    /// <param name="elbow">Patient.</param>
    /// <param name="view">Lateral, AP or oblique.</param>
    /// <param name="options">How films are positioned and exposed.</param>
    /// <param name="size">Pixels along each side, 64 to 4096.</param>
    /// <exception cref="ArgumentOutOfRangeException">The size is outside its range.</exception>
    public SimulatedFilm Simulate(ElbowCase elbow, View view, SimulationOptions options, int size)
    {
        ArgumentNullException.ThrowIfNull(elbow);
        ArgumentNullException.ThrowIfNull(options);
        ArgumentOutOfRangeException.ThrowIfLessThan(size, 64);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(size, 4096);
        var projection = Simulation.Project(elbow, view, size, options);
        var truth = projection.Truth;
        var pixelMm = truth.ObjectPixelMillimetres;
        var random = Simulation.Stream(elbow, view, ExposurePurpose);
        var settings = ExposureSampler.Sample(random, options.Adequacy, Content(projection));
        var plate = PlateComposer.Compose(
            projection.Paths, pixelMm, settings, () => Simulation.Project(elbow, Other(view), size, options).Paths);
        var pixels = exposure.Expose(plate, pixelMm, settings);
        var field = new ExposedField(settings, size, size, pixelMm);
        return new SimulatedFilm(pixels, size, size, pixelMm, Context(projection), Seen(truth, field), settings)
        {
            Neutral = NeutralValues.Of(elbow, view, options.Adequacy),
        };
    }

    private static View Other(View view) => view == View.Lateral ? View.Ap : View.Lateral;

    private static FilmContent Content(Projection projection)
    {
        var truth = projection.Truth;
        var locator = truth.Locator;
        Point[] points = [locator.Joint, locator.Mark, locator.Shaft, locator.Forearm];
        var focus = new Point(points.Average(p => p.X), points.Average(p => p.Y));
        return new FilmContent(
            projection.Paths,
            truth.View,
            truth.Side,
            points,
            focus,
            truth.UnitWMillimetres / truth.ObjectPixelMillimetres,
            truth.ObjectPixelMillimetres);
    }

    private static FilmContext Context(Projection projection)
    {
        if (projection.Paths.Cast.Any(v => v > 0))
        {
            return FilmContext.Cast;
        }

        if (projection.Paths.Metal.Any(v => v > 0))
        {
            return FilmContext.Fixation;
        }

        return FilmContext.Acute;
    }

    private static FilmTruth Seen(FilmTruth truth, ExposedField field) => truth with
    {
        Landmarks =
        [
            .. truth.Landmarks.Select(landmark => landmark.Position is { } position && !field.Contains(position)
                ? landmark with { Position = null, Tangent = null }
                : landmark),
        ],
    };
}
