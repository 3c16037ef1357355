namespace ElbowAssist.Bench.Statistics;

/// <summary>
/// Mean loss among the most certain share of films, for every share (Geifman and El-Yaniv, NIPS 2017). Equally certain films
/// count with the mean of their losses, so that the order they come in does not matter.
/// </summary>
public static class RiskCoverage
{
    /// <summary>The curve, from the most certain film alone to all films.</summary>
    /// <param name="films">Uncertainty (larger = less certain) and loss of each film.</param>
    public static IReadOnlyList<(double Coverage, double Risk)> Curve(IReadOnlyList<(double Uncertainty, double Loss)> films)
    {
        ArgumentNullException.ThrowIfNull(films);
        var curve = new List<(double, double)>(films.Count);
        var sum = 0.0;
        foreach (var loss in films.GroupBy(f => f.Uncertainty, f => f.Loss).OrderBy(g => g.Key).SelectMany(alike => Enumerable.Repeat(alike.Average(), alike.Count())))
        {
            sum += loss;
            curve.Add(((curve.Count + 1.0) / films.Count, sum / (curve.Count + 1)));
        }

        return curve;
    }
}
