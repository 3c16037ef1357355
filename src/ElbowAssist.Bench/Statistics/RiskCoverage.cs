namespace ElbowAssist.Bench.Statistics;

/// <summary>Mean loss among the most certain share of films, for every share (Geifman and El-Yaniv, NIPS 2017).</summary>
public static class RiskCoverage
{
    /// <summary>The curve, from the most certain film alone to all films.</summary>
    /// <param name="films">Uncertainty (larger = less certain) and loss of each film.</param>
    public static IReadOnlyList<(double Coverage, double Risk)> Curve(IReadOnlyList<(double Uncertainty, double Loss)> films)
    {
        ArgumentNullException.ThrowIfNull(films);
        var curve = new List<(double, double)>(films.Count);
        var sum = 0.0;
        foreach (var (_, loss) in films.OrderBy(f => f.Uncertainty))
        {
            sum += loss;
            curve.Add(((curve.Count + 1.0) / films.Count, sum / (curve.Count + 1)));
        }

        return curve;
    }
}
