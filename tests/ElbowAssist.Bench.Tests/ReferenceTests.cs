using System.Globalization;
using ElbowAssist.Bench.Statistics;
using ElbowAssist.Testing;

namespace ElbowAssist.Bench.Tests;

/// <summary>
/// Statistics against SciPy, statsmodels, scikit-learn, R and its package psych, whose values lie in <c>Reference</c> beside the scripts
/// that made them.
/// </summary>
public sealed class ReferenceTests
{
    private const double Exact = 1e-6;
    private static readonly string Folder = Path.Combine(Repository.Root, "tests", "ElbowAssist.Bench.Tests", "Reference");
    private readonly Dictionary<string, double> python = Values("reference-python.txt");
    private readonly Dictionary<string, double> r = Values("reference-r.txt");
    private readonly Dictionary<string, double> sklearn = Values("reference-sklearn.txt");

    [Fact] // R 4.2, psych::ICC.
    public void IntraclassCorrelations_AgreeWithPsych()
    {
        var ratings = Table("ratings.csv");
        var table = new double[ratings.Count, 3];
        for (var i = 0; i < ratings.Count; i++)
        {
            (table[i, 0], table[i, 1], table[i, 2]) = (ratings[i][0], ratings[i][1], ratings[i][2]);
        }

        var (agreement, consistency) = (IntraclassCorrelation.AbsoluteAgreement(table), IntraclassCorrelation.Consistency(table));
        Assert.Equal([r["icc2"], r["icc2.low"], r["icc2.high"]], [agreement.Value, agreement.Low, agreement.High], Near);
        Assert.Equal([r["icc3"], r["icc3.low"], r["icc3.high"]], [consistency.Value, consistency.Low, consistency.High], Near);
    }

    [Fact]
    public void IntraclassCorrelations_OfRatersWhoNeverDiffer_HaveNoInterval()
    {
        double[,] alike = { { 0.1 + 0.2, 0.3 }, { 0.3, 0.3 }, { 0.3, 0.1 + 0.2 } }, constant = { { 1, 3 }, { 2, 4 }, { 5, 7 } };
        Assert.True(double.IsNaN(IntraclassCorrelation.AbsoluteAgreement(alike).Value) && double.IsNaN(IntraclassCorrelation.Consistency(alike).Value));
        Assert.Equal((1.0, double.NaN), (IntraclassCorrelation.Consistency(constant).Value, IntraclassCorrelation.Consistency(constant).Low));
    }

    [Fact] // R 4.2, psych::cohen.kappa; statsmodels, cohens_kappa with quadratic weights.
    public void WeightedKappa_AgreesWithPsychAndStatsmodels()
    {
        var zones = Table("zones.csv");
        var kappa = WeightedKappa.Of([.. zones.Select(z => (int)z[0])], [.. zones.Select(z => (int)z[1])], 5);
        Assert.Equal(r["kappa"], kappa.Value, Exact);
        Assert.Equal([python["kappa"], python["kappa.low"], python["kappa.high"]], [kappa.Value, kappa.Low, kappa.High], Near);
    }

    [Theory] // SciPy, scipy.stats.wilcoxon; R, wilcox.test.
    [InlineData("few")]
    [InlineData("exact")]
    [InlineData("tied")]
    [InlineData("many")]
    public void Wilcoxon_AgreesWithSciPyAndR(string name)
    {
        var test = WilcoxonSignedRank.Of(Column($"differences-{name}.csv"));
        Assert.Equal(python[$"wilcoxon.{name}.statistic"], test.Statistic, Exact);
        Assert.Equal(python[$"wilcoxon.{name}.p"], test.P, Exact);
        Assert.Equal(r[$"wilcoxon.{name}.p"], test.P, Exact);
    }

    [Fact] // SciPy, scipy.stats.permutation_test over all signs.
    public void SignFlips_AgreeWithSciPy() =>
        Assert.Equal(python["flip.few.p"], SignFlipTest.TwoSided(Column("differences-few.csv"), seed: 1), Exact);

    [Fact] // Drawn signs against all of them: a share p of 10 000 draws has the standard deviation √(p(1 − p)/10 000).
    public void DrawnSignFlips_ComeNearAllOfThem()
    {
        double[] twice = [.. Column("differences-exact.csv").Take(14)];
        var all = SignFlipTest.TwoSided(twice, seed: 1);
        // A difference of nothing changes no sum, and makes fifteen, which are drawn.
        Assert.Equal(all, SignFlipTest.TwoSided([.. twice, 0], seed: 1), 0.02);
    }

    [Fact] // statsmodels, multipletests; R, p.adjust.
    public void Holm_AgreesWithStatsmodelsAndR()
    {
        var corrected = HolmCorrection.Of(Column("probabilities.csv"));
        Assert.Equal(Enumerable.Range(0, 7).Select(i => python[FormattableString.Invariant($"holm.{i}")]), corrected, Near);
        Assert.Equal(Enumerable.Range(0, 7).Select(i => r[FormattableString.Invariant($"holm.{i}")]), corrected, Near);
        Assert.Equal([0.02, double.NaN, 0.5], HolmCorrection.Of([0.01, double.NaN, 0.5]));
    }

    [Fact] // R, mean, sd, t.test and the formula of Bland and Altman 1999 for the limits.
    public void BlandAltman_AgreesWithR()
    {
        var ratings = Table("ratings.csv");
        var agreement = BlandAltman.Of([.. ratings.Select(v => v[0])], [.. ratings.Select(v => v[1])]);
        Assert.Equal(
            [r["bland.bias"], r["bland.sd"], r["bland.bias.margin"], r["bland.limit.margin"]],
            [agreement.Bias, agreement.StandardDeviation, agreement.BiasMargin, agreement.LimitMargin], Near);
    }

    [Fact] // Peak flow meters, Bland and Altman 1986 (from memory): bias −22.0 to 17.8; lower limit −114.3 to −45.1 by the simpler √(3s²/n).
    public void BlandAltman_GivesThePublishedIntervals()
    {
        double[] wright = [494, 395, 516, 434, 476, 557, 413, 442, 650, 433, 417, 656, 267, 478, 178, 423, 427];
        double[] mini = [512, 430, 520, 428, 500, 600, 364, 380, 658, 445, 432, 626, 260, 477, 259, 350, 451];
        var agreement = BlandAltman.Of(wright, mini);
        Assert.Equal(-22.0, agreement.Bias - agreement.BiasMargin, 0.1);
        Assert.Equal(17.8, agreement.Bias + agreement.BiasMargin, 0.1);
        Assert.InRange(agreement.LowerLimit - agreement.LimitMargin, -114.3, -114.3 + 2);
    }

    [Theory] // NumPy, numpy.quantile and numpy.std.
    [InlineData(0.025)]
    [InlineData(0.25)]
    [InlineData(0.5)]
    [InlineData(0.75)]
    [InlineData(0.975)]
    public void Quantiles_AgreeWithNumpy(double q) =>
        Assert.Equal(python[FormattableString.Invariant($"quantile.{q}")], Quantile.Of(Column("differences-many.csv"), q), Exact);

    [Fact] // SciPy, scipy.stats.bootstrap with 200 000 resamples; ours makes 40 000, so the ends agree to their sampling error.
    public void ClusterBootstrap_ComesNearSciPy()
    {
        var values = Column("differences-many.csv");
        IReadOnlyList<double>[] clusters = [.. values.Chunk(3)];
        var (low, high) = ClusterBootstrap.MeanInterval(clusters, seed: 1, draws: 40_000);
        Assert.Equal(python["bootstrap.low"], low, 0.006);
        Assert.Equal(python["bootstrap.high"], high, 0.006);
        var (slowLow, slowHigh) = ClusterBootstrap.Interval(clusters, v => v.Average(), seed: 1, draws: 40_000);
        Assert.Equal([slowLow, slowHigh], [low, high], Near);
    }

    [Fact] // scikit-learn, brier_score_loss of each class against the rest.
    public void Brier_AgreesWithScikitLearn() => Assert.Equal(sklearn["brier"], BrierScore.Of(Forecasts()), Exact);

    [Fact] // scikit-learn, calibration_curve in ten bins, weighted by their counts.
    public void CalibrationError_AgreesWithScikitLearn() =>
        Assert.Equal(sklearn["calibration"], ExpectedCalibrationError.Of([.. Forecasts().SelectMany(f => f)]), Exact);

    [Fact] // scikit-learn, mean_pinball_loss of the two quantiles.
    public void IntervalScore_AgreesWithScikitLearn() =>
        Assert.Equal(sklearn["interval"], Table("intervals.csv").Average(i => IntervalScore.Of(i[0], i[1], i[2])), Exact);

    [Fact] // scikit-learn, precision_recall_curve: 1 less the precision at every threshold of certainty.
    public void RiskCoverage_AgreesWithScikitLearn()
    {
        var curve = RiskCoverage.Curve([.. Table("certainty.csv").Select(c => (c[0], c[1]))]);
        Assert.Equal(sklearn["risk.count"], curve.Count);
        Assert.Equal(sklearn["risk.area"], curve.Average(c => c.Risk), Exact);
        Assert.Equal([0.5, sklearn["risk.half"]], [curve[24].Coverage, curve[24].Risk], Near);
    }

    [Fact] // Worked by hand: of the two equally certain films each may come first, so both count with the mean of 1 and 3.
    public void RiskCoverage_OfEqualCertainty_DoesNotDependOnTheOrderOfFilms()
    {
        (double, double)[] films = [(0.2, 1), (0.1, 4), (0.2, 3)];
        Assert.Equal([4, 3, 8 / 3.0], RiskCoverage.Curve(films).Select(c => c.Risk), Near);
        Assert.Equal(RiskCoverage.Curve(films), RiskCoverage.Curve([.. films.Reverse()]));
    }

    [Fact] // Worked by hand: width 2, and 2/0.05 times what lies outside.
    public void IntervalScore_OfHandWorkedCases()
    {
        Assert.Equal(2, IntervalScore.Of(1, 3, 2), 12);
        Assert.Equal(2 + 20, IntervalScore.Of(1, 3, 3.5), 12);
        Assert.Equal(2 + 40, IntervalScore.Of(1, 3, 0), 12);
    }

    [Fact] // Worked by hand: (0.3² + 0.3²) and (0.8² + 0.8²).
    public void Brier_OfHandWorkedCases() =>
        Assert.Equal((0.18 + 1.28) / 2, BrierScore.Of([[(0.7, true), (0.3, false)], [(0.8, false), (0.2, true)]]), 12);

    /// <summary>Three classes a forecast; the last column is the one that came true.</summary>
    private static IReadOnlyList<IReadOnlyList<(double Probability, bool Occurred)>> Forecasts() =>
        [.. Table("forecasts.csv").Select(f => (IReadOnlyList<(double, bool)>)[.. f.Take(3).Select((p, c) => (p, c == (int)f[3]))])];

    private static bool Near(double a, double b) => Math.Abs(a - b) <= Exact;

    private static Dictionary<string, double> Values(string file) => File.ReadLines(Path.Combine(Folder, file))
        .Where(l => !l.StartsWith('#')).Select(l => l.Split(' ')).ToDictionary(l => l[0], l => double.Parse(l[1], CultureInfo.InvariantCulture));

    private static List<double[]> Table(string file) =>
        [.. File.ReadLines(Path.Combine(Folder, file)).Select(l => l.Split(',').Select(v => double.Parse(v, CultureInfo.InvariantCulture)).ToArray())];

    private static double[] Column(string file) => [.. Table(file).Select(row => row[0])];
}
