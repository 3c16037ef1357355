namespace ElbowAssist.Pipeline.Calibration;

/// <summary>
/// What the network's pooled features look like on films it knows: a Gaussian along their main directions and a common
/// variance across the rest. Far from it, the network sees something it has not learned.
/// </summary>
/// <param name="Mean">Mean feature vector.</param>
/// <param name="Directions">Main directions, of length 1, one row each.</param>
/// <param name="Variances">Variance along each direction.</param>
/// <param name="Residual">Variance in each remaining direction.</param>
/// <param name="Signs">What can be told from the features, such as metal on the film.</param>
/// <param name="Films">Films it rests on.</param>
public sealed record FeatureModel(
    double[] Mean, IReadOnlyList<double[]> Directions, double[] Variances, double Residual, IReadOnlyList<FeatureSign> Signs, int Films)
{
    /// <summary>Root mean square distance in standard deviations: about 1 on films like those it was fitted on.</summary>
    /// <returns>Null if the features are of another length.</returns>
    public double? Distance(IReadOnlyList<double> features)
    {
        if (Scores(features) is not { } scores)
        {
            return null;
        }

        var rest = Mean.Select((m, i) => (features[i] - m) * (features[i] - m)).Sum();
        var sum = 0.0;
        for (var k = 0; k < scores.Length; k++)
        {
            sum += scores[k] * scores[k];
            rest -= scores[k] * scores[k] * Variances[k];
        }

        return Math.Sqrt((sum + (Math.Max(0, rest) / Residual)) / Mean.Length);
    }

    /// <summary>Probability of a sign by its name, or null if it was not learned.</summary>
    public double? Probability(string sign, IReadOnlyList<double> features)
    {
        if (Signs.FirstOrDefault(s => s.Name == sign) is not { } learned || Scores(features) is not { } scores)
        {
            return null;
        }

        return 1 / (1 + Math.Exp(-(learned.Bias + scores.Zip(learned.Weights, (s, w) => s * w).Sum())));
    }

    /// <summary>Features along the main directions in standard deviations; null if they are of another length.</summary>
    public double[]? Scores(IReadOnlyList<double> features)
    {
        ArgumentNullException.ThrowIfNull(features);
        return features.Count == Mean.Length
            ? [.. Directions.Select((d, k) => d.Select((v, i) => v * (features[i] - Mean[i])).Sum() / Math.Sqrt(Variances[k]))]
            : null;
    }
}

/// <summary>A logistic rule on the scores of a film's features.</summary>
/// <param name="Name"><c>metal</c> or <c>cast</c>.</param>
/// <param name="Weights">Weight of each score.</param>
/// <param name="Bias">Log-odds at scores of zero.</param>
public sealed record FeatureSign(string Name, double[] Weights, double Bias);
