using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Anatomy.Measurements;
using ElbowAssist.Exchange.Json;
using ElbowAssist.Phantom;
using ElbowAssist.Reading;

namespace ElbowAssist.Cli.Simulating;

/// <summary>The truth of a simulated film as its file tells it: exact landmarks, and every construction applied to them.</summary>
internal static class TruthMapping
{
    public static TruthFile Of(SimulatedFilm film, string file, string sha256)
    {
        var truth = film.Truth;
        var values = LandmarkSet.Of(truth.View) is { } set ? Values(film, set) : [];
        return new TruthFile
        {
            Image = new ImageFacts(file, film.Width, film.Height, film.PixelMm, film.PixelMm, "simulated, magnification corrected", sha256),
            View = new ViewFinding(truth.View, new Dictionary<string, double>(StringComparer.Ordinal), truth.ViewErrorDegrees),
            Side = truth.Side,
            Patient = new Patient(truth.AgeMonths, truth.Sex),
            Context = film.Context,
            Landmarks = [.. truth.Landmarks.Select(l => new TrueLandmark(l.Name, l.Kind, l.Position, l.Tangent, l.Visible ? 1 : 0))],
            Lines = [.. values.SelectMany(v => v.Lines.Select(l => new NamedLine(v.Definition.Name, l.Line.Point, l.Line.Direction)))],
            Circles = [.. values.SelectMany(v => v.Circles).DistinctBy(c => c.Name, StringComparer.Ordinal).Select(c => new NamedCircle(c.Name, c.Circle.Centre, c.Circle.Radius))],
            Measurements = [.. values.Select(Measurement.Exact)],
            Simulated = new SimulatedFacts(
                truth.Seed,
                truth.AgeMonths,
                truth.Sex,
                truth.Side,
                truth.Injuries,
                truth.ViewErrorDegrees,
                film.ExposureFigures,
                film.Neutral),
        };
    }

    private static List<MeasuredValue> Values(SimulatedFilm film, LandmarkSet set)
    {
        var exact = LaidLandmarks.Exact(set, [.. film.Truth.Landmarks.Select(l => l.Position)], FilmScale.Of(film.PixelMm, film.PixelMm));
        return [.. FilmMeasuring.Measure(exact, RedrawOptions.Default).Where(v => v.Value is not null)];
    }
}
