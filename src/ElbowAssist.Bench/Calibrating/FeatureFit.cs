using ElbowAssist.Anatomy;
using ElbowAssist.Pipeline.Calibration;
using MathNet.Numerics.LinearAlgebra;

namespace ElbowAssist.Bench.Calibrating;

/// <summary>Fits what the network's features look like, and which of them tell of metal and of a cast.</summary>
internal static class FeatureFit
{
    private const int MostDirections = 40;

    /// <summary>Films without which a sign is not learned.</summary>
    private const int FewestShown = 8;

    /// <summary>Prior precision of the weights of a sign: keeps them small where films are few.</summary>
    private const double Ridge = 1;

    /// <summary>The model, or null if the network gives no features or there are too few films.</summary>
    public static FeatureModel? Of(IReadOnlyList<CalibrationFilm> films)
    {
        var rows = films.Select(f => f.Proposed.Proposals.Landmarks!.Features.ToArray()).ToList();
        if (rows.Count < 20 || rows[0].Length == 0)
        {
            return null;
        }

        var length = rows[0].Length;
        var mean = Enumerable.Range(0, length).Select(i => rows.Average(r => r[i])).ToArray();
        var data = Matrix<double>.Build.Dense(rows.Count, length, (r, c) => rows[r][c] - mean[c]);
        var eigen = (data.TransposeThisAndMultiply(data) / (rows.Count - 1)).Evd(Symmetricity.Symmetric);
        var kept = Math.Min(Math.Min(MostDirections, length / 2), rows.Count / 10);
        var values = eigen.EigenValues.Select(v => Math.Max(0, v.Real)).Reverse().ToArray();
        var residual = Math.Max(1e-9, values.Skip(kept).Average());
        var model = new FeatureModel(
            [.. mean.Select(m => Math.Round(m, 5))],
            [.. Enumerable.Range(0, kept).Select(k => eigen.EigenVectors.Column(length - 1 - k).Select(v => Math.Round(v, 5)).ToArray())],
            [.. values.Take(kept).Select(v => Significant(Math.Max(v, residual)))],
            Significant(residual),
            [],
            rows.Count);
        return model with
        {
            Signs = [.. Signs(model, films, "metal", FilmContext.Fixation), .. Signs(model, films, "cast", FilmContext.Cast)],
        };
    }

    private static double Significant(double value) => double.Parse(value.ToString("G6", System.Globalization.CultureInfo.InvariantCulture), System.Globalization.CultureInfo.InvariantCulture);

    private static IEnumerable<FeatureSign> Signs(FeatureModel model, IReadOnlyList<CalibrationFilm> films, string name, FilmContext context)
    {
        // A film in a cast may have metal under it that its context does not tell.
        var told = films.Where(f => f.Truth.Context != FilmContext.Unknown && (context == FilmContext.Cast || f.Truth.Context != FilmContext.Cast)).ToList();
        var shown = told.Count(f => f.Truth.Context == context);
        if (shown < FewestShown || told.Count - shown < FewestShown)
        {
            yield break;
        }

        var scores = Matrix<double>.Build.DenseOfRowArrays(told.Select(f =>
            model.Scores(f.Proposed.Proposals.Landmarks!.Features)!.Append(1).ToArray()));
        var labels = Vector<double>.Build.Dense([.. told.Select(f => f.Truth.Context == context ? 1.0 : 0.0)]);
        var weights = Logistic(scores, labels);
        yield return new FeatureSign(name, [.. weights.Take(weights.Count - 1).Select(w => Math.Round(w, 5))], Math.Round(weights[^1], 5));
    }

    /// <summary>Ridge logistic regression by Newton's method; the last column is the constant and is not held down.</summary>
    private static Vector<double> Logistic(Matrix<double> x, Vector<double> y)
    {
        var weights = Vector<double>.Build.Dense(x.ColumnCount);
        var prior = Vector<double>.Build.Dense(x.ColumnCount, i => i == x.ColumnCount - 1 ? 1e-6 : Ridge);
        for (var step = 0; step < 30; step++)
        {
            var p = (x * weights).Map(t => 1 / (1 + Math.Exp(-t)));
            var gradient = x.TransposeThisAndMultiply(y - p) - prior.PointwiseMultiply(weights);
            var curvature = p.Map(v => Math.Max(1e-6, v * (1 - v)));
            var weighted = Matrix<double>.Build.Dense(x.RowCount, x.ColumnCount, (r, c) => x[r, c] * curvature[r]);
            var hessian = x.TransposeThisAndMultiply(weighted) + Matrix<double>.Build.DenseOfDiagonalVector(prior);
            var move = hessian.Cholesky().Solve(gradient);
            weights += move * Math.Min(1, 3 / Math.Max(1e-9, move.L2Norm()));
        }

        return weights;
    }
}
