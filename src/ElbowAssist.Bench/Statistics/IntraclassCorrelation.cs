using MathNet.Numerics.Distributions;

namespace ElbowAssist.Bench.Statistics;

/// <summary>
/// Single-rating intraclass correlations of a complete table of subjects by raters
/// (Shrout and Fleiss, Psychol Bull 1979;86:420–428; intervals as McGraw and Wong, Psychol Methods 1996;1:30–46).
/// </summary>
/// <param name="Value">The coefficient.</param>
/// <param name="Low">Lower end of its interval; NaN where raters never differ but by a constant, and nothing can be said.</param>
/// <param name="High">Upper end of its interval.</param>
public sealed record IntraclassCorrelation(double Value, double Low, double High)
{
    private const double RoundingShare = 1e-24;

    /// <summary>ICC(2,1): raters are a random sample, absolute agreement.</summary>
    /// <param name="ratings">Rows are subjects, columns raters; at least two of each.</param>
    /// <param name="confidence">Confidence of the interval.</param>
    /// <exception cref="ArgumentException">The table has fewer than two rows or columns.</exception>
    public static IntraclassCorrelation AbsoluteAgreement(double[,] ratings, double confidence = 0.95)
    {
        var (n, k, rows, columns, error) = MeanSquares(ratings);
        var value = (rows - error) / (rows + ((k - 1) * error) + (k * (columns - error) / n));
        var a = k * value / (n * (1 - value));
        var b = 1 + (k * value * (n - 1) / (n * (1 - value)));
        var freedom = Math.Pow((a * columns) + (b * error), 2) /
            ((Math.Pow(a * columns, 2) / (k - 1)) + (Math.Pow(b * error, 2) / ((n - 1) * (k - 1))));
        if (!(freedom is > 0 and < double.PositiveInfinity))
        {
            return new IntraclassCorrelation(value, double.NaN, double.NaN);
        }

        var upper = 1 - ((1 - confidence) / 2);
        var f1 = FisherSnedecor.InvCDF(n - 1, freedom, upper);
        var f2 = FisherSnedecor.InvCDF(freedom, n - 1, upper);
        var common = (k * columns) + (((k * n) - k - n) * error);
        return new IntraclassCorrelation(
            value,
            n * (rows - (f1 * error)) / ((f1 * common) + (n * rows)),
            n * ((f2 * rows) - error) / (common + (n * f2 * rows)));
    }

    /// <summary>ICC(3,1): these raters only, consistency.</summary>
    /// <param name="ratings">Rows are subjects, columns raters; at least two of each.</param>
    /// <param name="confidence">Confidence of the interval.</param>
    /// <exception cref="ArgumentException">The table has fewer than two rows or columns.</exception>
    public static IntraclassCorrelation Consistency(double[,] ratings, double confidence = 0.95)
    {
        var (n, k, rows, _, error) = MeanSquares(ratings);
        if (error <= 0)
        {
            return new IntraclassCorrelation(rows > 0 ? 1 : double.NaN, double.NaN, double.NaN);
        }

        var f = rows / error;
        var upper = 1 - ((1 - confidence) / 2);
        var low = f / FisherSnedecor.InvCDF(n - 1, (n - 1) * (k - 1), upper);
        var high = f * FisherSnedecor.InvCDF((n - 1) * (k - 1), n - 1, upper);
        return new IntraclassCorrelation((f - 1) / (f + k - 1), (low - 1) / (low + k - 1), (high - 1) / (high + k - 1));
    }

    private static (double N, double K, double Rows, double Columns, double Error) MeanSquares(double[,] ratings)
    {
        ArgumentNullException.ThrowIfNull(ratings);
        int n = ratings.GetLength(0), k = ratings.GetLength(1);
        if (n < 2 || k < 2)
        {
            throw new ArgumentException("At least two subjects and two raters are needed.", nameof(ratings));
        }

        var rowMeans = new double[n];
        var columnMeans = new double[k];
        var mean = 0.0;
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < k; j++)
            {
                rowMeans[i] += ratings[i, j] / k;
                columnMeans[j] += ratings[i, j] / n;
                mean += ratings[i, j] / (n * k);
            }
        }

        var error = 0.0;
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < k; j++)
            {
                var residual = ratings[i, j] - rowMeans[i] - columnMeans[j] + mean;
                error += residual * residual / ((n - 1.0) * (k - 1));
            }
        }

        // Where all is alike, what is left of the differences is rounding.
        double Beyond(double square) => square > RoundingShare * mean * mean ? square : 0;
        var rows = k * rowMeans.Sum(m => (m - mean) * (m - mean)) / (n - 1);
        var columns = n * columnMeans.Sum(m => (m - mean) * (m - mean)) / (k - 1);
        return (n, k, Beyond(rows), Beyond(columns), Beyond(error));
    }
}
