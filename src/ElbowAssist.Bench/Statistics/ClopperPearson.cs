using MathNet.Numerics.Distributions;

namespace ElbowAssist.Bench.Statistics;

/// <summary>The exact interval of a binomial share (Clopper and Pearson, Biometrika 1934;26:404–413).</summary>
public static class ClopperPearson
{
    /// <summary>The interval.</summary>
    /// <param name="successes">Number of successes.</param>
    /// <param name="trials">Number of trials, at least one.</param>
    /// <param name="confidence">Confidence, e.g. 0.95.</param>
    /// <exception cref="ArgumentOutOfRangeException">The counts or the confidence are impossible.</exception>
    public static (double Low, double High) Interval(int successes, int trials, double confidence = 0.95)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(trials, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(successes, 0);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(successes, trials);
        if (confidence is not (> 0 and < 1))
        {
            throw new ArgumentOutOfRangeException(nameof(confidence), confidence, "The confidence lies between 0 and 1.");
        }

        var tail = (1 - confidence) / 2;
        var low = successes == 0 ? 0 : Beta.InvCDF(successes, trials - successes + 1, tail);
        var high = successes == trials ? 1 : Beta.InvCDF(successes + 1, trials - successes, 1 - tail);
        return (low, high);
    }
}
