using ElbowAssist.Anatomy.Measurements.Construction;
using ElbowAssist.Geometry;
using ElbowAssist.Geometry.Spread;

namespace ElbowAssist.Anatomy.Measurements;

/// <summary>Lays every construction of a view through the landmarks of a film.</summary>
public static class FilmMeasuring
{
    /// <summary>
    /// Values with their spread, whatever the film can carry. Every measurement of the view is listed, with a value or with
    /// reason codes. Landmarks without spread give values without intervals.
    /// </summary>
    public static IReadOnlyList<MeasuredValue> Measure(LaidLandmarks laid, RedrawOptions options)
    {
        ArgumentNullException.ThrowIfNull(laid);
        ArgumentNullException.ThrowIfNull(options);
        var all = ViewMeasurements.Of(laid.Set.View);
        var missing = all.ToDictionary(m => m, m => MissingLandmarks.Of(m, laid));
        var film = FilmConstruction.Of(laid, [.. all.Where(m => missing[m].Count == 0)]);
        using var laying = Laying.Of(film, laid, options);
        return [.. all.Select(m => missing[m].Count > 0
            ? new MeasuredValue { Definition = m, Reasons = missing[m] }
            : laying.ValueOf(m))];
    }

    /// <summary>
    /// Exact values by name, all landmarks weighing alike; measurements that cannot be laid are left out. Applied to the
    /// exact landmarks of a simulated film this is the truth of that film.
    /// </summary>
    public static IReadOnlyDictionary<string, double> Exact(LaidLandmarks laid) =>
        Measure(laid, RedrawOptions.Default).Where(v => v.Value is not null)
            .ToDictionary(v => v.Definition.Name, v => v.Value!.Value, StringComparer.Ordinal);

    /// <summary>
    /// Standard deviations by name in closed form, the counterpart of the redraws; measurements that cannot be laid are
    /// left out.
    /// </summary>
    /// <exception cref="ArgumentException">The landmarks have no spread.</exception>
    public static IReadOnlyDictionary<string, double> ClosedFormDeviations(LaidLandmarks laid)
    {
        ArgumentNullException.ThrowIfNull(laid);
        if (laid.Spread is null)
        {
            throw new ArgumentException("The landmarks have no spread.", nameof(laid));
        }

        var all = ViewMeasurements.Of(laid.Set.View);
        var film = FilmConstruction.Of(laid, [.. all.Where(m => MissingLandmarks.Of(m, laid).Count == 0)]);
        var lines = new Line[film.LineCount];
        var deviations = DeltaMethod.StandardDeviations(
            laid.Points, laid.Spread, (points, values) => film.Lay(points, values, lines), film.Measurements.Count);
        return film.Measurements.Zip(deviations).Where(d => double.IsFinite(d.Second))
            .ToDictionary(d => d.First.Name, d => d.Second, StringComparer.Ordinal);
    }
}
