using ElbowAssist.Geometry;

namespace ElbowAssist.Anatomy.Measurements.Construction;

/// <summary>All constructions of one film, ready to be laid through moved landmarks without allocating.</summary>
internal abstract class FilmConstruction
{
    private protected FilmConstruction(IReadOnlyList<MeasurementDefinition> measurements)
    {
        Measurements = measurements;
        LineCount = measurements.Sum(m => m.LineCount);
    }

    /// <summary>The measurements laid.</summary>
    public IReadOnlyList<MeasurementDefinition> Measurements { get; }

    /// <summary>Number of lines of all of them together.</summary>
    public int LineCount { get; }

    /// <summary>The constructions of a film's view.</summary>
    public static FilmConstruction Of(LaidLandmarks laid, IReadOnlyList<MeasurementDefinition> measurements) =>
        laid.Set.View == View.Lateral
            ? new LateralFilm(laid, [.. measurements.Cast<LateralMeasurement>()])
            : new ApFilm(laid, [.. measurements.Cast<ApMeasurement>()]);

    /// <summary>Lays every construction: one value per measurement, and their lines one after another; scaled coordinates.</summary>
    public abstract void Lay(ReadOnlySpan<Point> points, Span<double> values, Span<Line> lines);

    /// <summary>A circle of the film by name; NaN if undefined.</summary>
    public abstract Circle CircleOf(string name, ReadOnlySpan<Point> points);

    // Two landmarks in one place have no direction, and the angle to it would come out as a number all the same.
    private static bool Run(ReadOnlySpan<Line> lines)
    {
        foreach (var line in lines)
        {
            if (!(line.Direction.Dot(line.Direction) > 0))
            {
                return false;
            }
        }

        return true;
    }

    private sealed class LateralFilm(LaidLandmarks laid, LateralMeasurement[] measurements) : FilmConstruction(measurements)
    {
        private readonly LateralFits fits = new(laid);

        public override void Lay(ReadOnlySpan<Point> points, Span<double> values, Span<Line> lines)
        {
            var film = fits.Lay(points);
            for (var i = 0; i < measurements.Length; i++)
            {
                var own = lines[..measurements[i].LineCount];
                var value = measurements[i].Lay(film, own);
                values[i] = Run(own) ? value : double.NaN;
                lines = lines[own.Length..];
            }
        }

        public override Circle CircleOf(string name, ReadOnlySpan<Point> points)
        {
            var film = fits.Lay(points);
            return name == "capitellum" ? film.Capitellum : film.Trochlea;
        }
    }

    private sealed class ApFilm(LaidLandmarks laid, ApMeasurement[] measurements) : FilmConstruction(measurements)
    {
        private readonly ApFits fits = new(laid);

        public override void Lay(ReadOnlySpan<Point> points, Span<double> values, Span<Line> lines)
        {
            var film = fits.Lay(points);
            for (var i = 0; i < measurements.Length; i++)
            {
                var own = lines[..measurements[i].LineCount];
                var value = measurements[i].Lay(film, own);
                values[i] = Run(own) ? value : double.NaN;
                lines = lines[own.Length..];
            }
        }

        public override Circle CircleOf(string name, ReadOnlySpan<Point> points) => FittedCircle.None;
    }
}
