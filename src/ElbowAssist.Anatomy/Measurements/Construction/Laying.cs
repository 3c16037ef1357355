using ElbowAssist.Geometry;
using ElbowAssist.Geometry.Spread;

namespace ElbowAssist.Anatomy.Measurements.Construction;

/// <summary>One film laid as proposed, and laid again.</summary>
internal sealed class Laying : IDisposable
{
    private const double Coverage = 0.95;

    /// <summary>Share of redraws in which a construction may come out undefined before its value is given up.</summary>
    private const double MostUndefined = 0.01;

    /// <summary>Draws from which the spread of lines is taken: enough to know a standard deviation within 3 %.</summary>
    private const int DrawsForLines = 500;

    private readonly FilmConstruction film;
    private readonly LaidLandmarks laid;
    private readonly RedrawOptions options;
    private readonly double[] values;
    private readonly Line[] lines;
    private readonly Redraws? redraws;

    private Laying(FilmConstruction film, LaidLandmarks laid, RedrawOptions options)
    {
        (this.film, this.laid, this.options) = (film, laid, options);
        values = new double[film.Measurements.Count];
        lines = new Line[film.LineCount];
        film.Lay(laid.Points, values, lines);
        redraws = laid.Spread is null ? null : Redraw();
    }

    public static Laying Of(FilmConstruction film, LaidLandmarks laid, RedrawOptions options) => new(film, laid, options);

    public void Dispose() => redraws?.Dispose();

    public MeasuredValue ValueOf(MeasurementDefinition measurement)
    {
        var (index, firstLine) = (0, 0);
        while (film.Measurements[index] != measurement)
        {
            firstLine += film.Measurements[index++].LineCount;
        }

        var value = values[index];
        IReadOnlyList<MeasuredCircle> circles = [.. measurement.Circles.Select(CircleNamed)];
        if (!double.IsFinite(value) || circles.Any(c => !(c.Circle.Radius > 0)))
        {
            return new MeasuredValue { Definition = measurement, Reasons = [ReasonCodes.ConstructionUndefined] };
        }

        if (redraws?.UndefinedShare(index) > MostUndefined)
        {
            return new MeasuredValue { Definition = measurement, Reasons = [ReasonCodes.LandmarkSpread] };
        }

        var factor = options.Factors.TryGetValue(measurement.Name, out var given) ? given : 1;
        return new MeasuredValue
        {
            Definition = measurement,
            Value = value,
            Redraw95 = redraws is null ? null : Stretched(redraws.Interval(index, Coverage), value, factor),
            Zones = redraws is null || measurement.Zones.Count == 0 ? null : ZonesOf(measurement, index, value, factor),
            Lines = [.. Enumerable.Range(firstLine, measurement.LineCount).Select(l => LineAt(l, factor * factor))],
            Circles = circles,
        };
    }

    // The lines' places and directions are redrawn along with the values, as two more values each.
    private Redraws Redraw()
    {
        var scale = laid.Scale;
        var again = new Line[lines.Length];
        var draw = 0;
        var nominal = lines.Select(l => scale.ToPixels(l)).ToArray();
        void Function(ReadOnlySpan<Point> points, Span<double> results)
        {
            film.Lay(points, results, again);
            if (++draw > DrawsForLines)
            {
                results[values.Length..].Fill(double.NaN);
                return;
            }

            for (var i = 0; i < again.Length; i++)
            {
                var line = scale.ToPixels(again[i]);

                // Across the line as redrawn: where it crosses the perpendicular of the first lies without bound once one
                // draw of a short line comes to stand upright on it.
                results[values.Length + (2 * i)] = line.Direction.Perpendicular.Dot(line.Point - nominal[i].Point);
                results[values.Length + (2 * i) + 1] = Math.Asin(nominal[i].Direction.Cross(line.Direction));
            }
        }

        return Redraws.Of(
            laid.Points, laid.Spread!, Function, values.Length + (2 * lines.Length), options.Draws, options.Seed);
    }

    private static (double Low, double High) Stretched((double Low, double High) interval, double value, double factor) =>
        (value + (factor * (interval.Low - value)), value + (factor * (interval.High - value)));

    private IReadOnlyDictionary<string, double> ZonesOf(MeasurementDefinition measurement, int index, double value, double factor)
    {
        var counts = new int[measurement.Zones.Count];
        var defined = 0;
        foreach (var draw in redraws!.Of(index))
        {
            var stretched = value + (factor * (draw - value));
            for (var zone = 0; zone < counts.Length; zone++)
            {
                if (measurement.Zones[zone].Holds(stretched))
                {
                    counts[zone]++;
                    defined++;
                }
            }
        }

        var shares = measurement.Zones.Zip(counts).ToDictionary(z => z.First.Name, z => (double)z.Second / defined, StringComparer.Ordinal);
        return options.Zones.TryGetValue(measurement.Name, out var correction) ? correction.Apply(shares) : shares;
    }

    private MeasuredLine LineAt(int line, double stretch)
    {
        var pixels = laid.Scale.ToPixels(lines[line]);
        if (redraws is null)
        {
            return new MeasuredLine(pixels, 0, 0, 0);
        }

        double offsets = 0, both = 0, angles = 0, count = 0;
        var offset = redraws.Of(values.Length + (2 * line));
        var angle = redraws.Of(values.Length + (2 * line) + 1);
        for (var draw = 0; draw < offset.Length; draw++)
        {
            if (double.IsFinite(offset[draw] + angle[draw]))
            {
                offsets += offset[draw] * offset[draw];
                both += offset[draw] * angle[draw];
                angles += angle[draw] * angle[draw];
                count++;
            }
        }

        return new MeasuredLine(pixels, stretch * offsets / count, stretch * both / count, stretch * angles / count);
    }

    private MeasuredCircle CircleNamed(string name)
    {
        var circle = film.CircleOf(name, laid.Points);
        var mean = Math.Sqrt(laid.Scale.ColumnSpacing * laid.Scale.RowSpacing);
        return new MeasuredCircle(name, new Circle(laid.Scale.ToPixels(circle.Centre), circle.Radius / mean));
    }
}
