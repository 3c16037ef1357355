using ElbowAssist.Bench.Statistics;

namespace ElbowAssist.Bench.Tests;

/// <summary>Each statistic against a published worked example or a reference program named beside it.</summary>
public sealed class StatisticsTests
{
    // Six subjects, four judges: Shrout and Fleiss, Psychol Bull 1979;86:420-428, table 2.
    private static readonly double[,] ShroutFleiss =
    {
        { 9, 2, 5, 8 }, { 6, 1, 3, 2 }, { 8, 4, 6, 8 }, { 7, 1, 2, 6 }, { 10, 5, 6, 9 }, { 6, 2, 4, 7 },
    };

    [Theory] // numpy 1.24, numpy.quantile with its default method.
    [InlineData(0.1, 0.65)]
    [InlineData(0.5, 3.75)]
    [InlineData(0.9, 7.6)]
    [InlineData(0.95, 8.65)]
    public void Quantile_AgreesWithNumpy(double probability, double expected) =>
        Assert.Equal(expected, Quantile.Of([3.1, 0.2, 5.5, 4.4, 9.7, 1.1], probability), 12);

    [Theory] // SciPy 1.10, scipy.stats.binomtest(...).proportion_ci(method="exact").
    [InlineData(7, 20, 0.95, 0.1539092047845412, 0.5921885345328283)]
    [InlineData(0, 15, 0.95, 0.0, 0.2180193609108388)]
    [InlineData(15, 15, 0.95, 0.7819806390891612, 1.0)]
    [InlineData(143, 150, 0.99, 0.8895901631171029, 0.9862345735863546)]
    public void ClopperPearson_AgreesWithScipy(int successes, int trials, double confidence, double low, double high)
    {
        var interval = ClopperPearson.Interval(successes, trials, confidence);
        Assert.Equal(low, interval.Low, 6);
        Assert.Equal(high, interval.High, 6);
    }

    [Fact] // Published 0.29; further digits and interval from R package psych, ICC(..., lmer = FALSE).
    public void IntraclassCorrelation_OfRandomRaters_AgreesWithThePublishedExample()
    {
        var icc = IntraclassCorrelation.AbsoluteAgreement(ShroutFleiss);
        Assert.Equal(0.289763779528, icc.Value, 6);
        Assert.Equal(0.0187865133747, icc.Low, 6);
        Assert.Equal(0.761084369649, icc.High, 6);
    }

    [Fact] // Published 0.71; further digits and interval from R package psych, ICC(..., lmer = FALSE).
    public void IntraclassCorrelation_OfFixedRaters_AgreesWithThePublishedExample()
    {
        var icc = IntraclassCorrelation.Consistency(ShroutFleiss);
        Assert.Equal(0.714840714841, icc.Value, 6);
        Assert.Equal(0.3424647650339, icc.Low, 6);
        Assert.Equal(0.945858259955, icc.High, 6);
    }

    [Fact] // statsmodels 0.13, inter_rater.cohens_kappa(table, wt="quadratic").
    public void WeightedKappa_AgreesWithStatsmodels()
    {
        int[,] table = { { 11, 3, 1 }, { 2, 9, 4 }, { 0, 3, 12 } };
        List<int> first = [], second = [];
        for (var i = 0; i < 3; i++)
        {
            for (var j = 0; j < 3; j++)
            {
                first.AddRange(Enumerable.Repeat(i, table[i, j]));
                second.AddRange(Enumerable.Repeat(j, table[i, j]));
            }
        }

        Assert.Equal(0.7333333333333333, WeightedKappa.Quadratic(first, second, 3), 12);
    }

    [Fact] // Bland and Altman, Lancet 1986;i:307-310, table 1, first readings: bias -2.1 l/min, SD 38.8 l/min.
    public void BlandAltman_AgreesWithThePublishedExample()
    {
        double[] wright = [494, 395, 516, 434, 476, 557, 413, 442, 650, 433, 417, 656, 267, 478, 178, 423, 427];
        double[] mini = [512, 430, 520, 428, 500, 600, 364, 380, 658, 445, 432, 626, 260, 477, 259, 350, 451];
        var agreement = BlandAltman.Of(wright, mini);
        Assert.Equal(-2.1, agreement.Bias, 1);
        Assert.Equal(38.8, agreement.StandardDeviation, 1);
        Assert.Equal(agreement.Bias - (1.96 * agreement.StandardDeviation), agreement.LowerLimit, 9);
    }

    [Fact] // Worked by hand: bins 0.2 (stated 0.5, occurred 1) and 0.9 (stated 1.8, occurred 1) over four forecasts.
    public void ExpectedCalibrationError_AgreesWithAHandWorkedCase() =>
        Assert.Equal(
            (0.5 + 0.8) / 4,
            ExpectedCalibrationError.Of([(0.25, true), (0.25, false), (0.9, true), (0.9, false)]),
            12);

    [Fact]
    public void RiskCoverage_OrdersByUncertainty()
    {
        var curve = RiskCoverage.Curve([(3, 1), (1, 0), (2, 0), (4, 1)]);
        Assert.Equal([(0.25, 0), (0.5, 0), (0.75, 1.0 / 3), (1, 0.5)], curve);
    }

    [Fact]
    public void ClusterBootstrap_OfEqualClusters_HasNoWidth_AndOfUnequalOnesCoversTheMean()
    {
        Assert.Equal((2.0, 2.0), ClusterBootstrap.Interval([[2, 2], [2, 2]], Enumerable.Average, 1));
        var (low, high) = ClusterBootstrap.Interval([[0, 0, 0], [1, 1, 1], [2, 2, 2], [3, 3, 3]], Enumerable.Average, 1);
        Assert.InRange(low, 0, 1);
        Assert.InRange(high, 2, 3);
    }

    [Fact]
    public void PredictionLimit_OfTenValues_TakesTheFactorOfTheTables()
    {
        // Student's t tables (from memory): 1.833 at 9 degrees of freedom and 5 %; times the root of 1.1. Mean 5.5, s² 82.5 / 9.
        double[] values = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10];
        Assert.Equal(5.5 + (1.8331 * Math.Sqrt(1.1) * Math.Sqrt(82.5 / 9)), PredictionLimit.Upper(values, 0.05), 0.001);
    }

    [Fact]
    public void PredictionLimit_IsExceededAsOftenAsItSays()
    {
        var normal = new MathNet.Numerics.Distributions.Normal(3, 2, new Random(5));
        var beyond = Enumerable.Range(0, 20_000)
            .Count(_ => normal.Sample() > PredictionLimit.Upper([.. Enumerable.Range(0, 15).Select(_ => normal.Sample())], 0.02));
        Assert.InRange(beyond, 330, 470);
    }
}
