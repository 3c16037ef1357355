using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Geometry;
using ElbowAssist.Pipeline.Calibration;
using MathNet.Numerics.LinearAlgebra;

namespace ElbowAssist.Bench.Calibrating;

/// <summary>
/// Fits how landmarks err together: principal factors (Harman, Modern Factor Analysis, 1976) of errors whitened by the
/// stated spread in the canonical pose.
/// </summary>
internal static class SpreadFit
{
    /// <summary>Shared moves kept: along and across each bone, and its turn.</summary>
    private const int Moves = 12;

    /// <summary>Errors beyond this many standard deviations count as this large: gross errors are for the refusal to catch.</summary>
    private const double Longest = 4;

    /// <summary>Films on which two landmarks must both be seen for their errors to be related.</summary>
    private const int FewestPairs = 20;

    /// <summary>Least share of its own variance that a landmark keeps for itself.</summary>
    private const double LeastOwn = 0.05;

    private const int Rounds = 20;

    public static SharedSpread Of(IReadOnlyList<CalibrationFilm> films, LandmarkSet set)
    {
        string[] names = [.. set.Landmarks.Select(l => l.Name)];
        var size = 2 * names.Length;
        var (sums, counts) = (new double[size, size], new int[size, size]);
        foreach (var film in films)
        {
            Add(Whitened(film, names), sums, counts);
        }

        var moment = Matrix<double>.Build.Dense(size, size, (r, c) => counts[r, c] >= FewestPairs
            ? sums[r, c] / counts[r, c]
            : r == c ? 1 : 0);
        var (loadings, own) = Factors(moment, Math.Min(Moves, size / 4));
        return new SharedSpread(
            names,
            [.. Enumerable.Range(0, size).Select(r => loadings.Row(r).Select(Rounded).ToArray())],
            [.. own.Select(o => new[] { Rounded(o.XX), Rounded(o.XY), Rounded(o.YY) })],
            films.Count);
    }

    private static double Rounded(double value) => Math.Round(value, 4);

    private static void Add(double?[] z, double[,] sums, int[,] counts)
    {
        for (var r = 0; r < z.Length; r++)
        {
            for (var c = 0; c < z.Length; c++)
            {
                if (z[r] is { } a && z[c] is { } b)
                {
                    sums[r, c] += a * b;
                    counts[r, c]++;
                }
            }
        }
    }

    private static double?[] Whitened(CalibrationFilm film, string[] names)
    {
        var proposed = film.Proposed.Proposals.Landmarks!;
        var places = proposed.Landmarks.ToDictionary(m => m.Name, StringComparer.Ordinal);
        var truths = film.Truth.Landmarks.ToDictionary(l => l.Name, StringComparer.Ordinal);
        var z = new double?[2 * names.Length];
        for (var i = 0; i < names.Length; i++)
        {
            if (truths.GetValueOrDefault(names[i])?.Position is not { } truth ||
                places.GetValueOrDefault(names[i]) is not { Spread: { } spread, Disagreement: null, Position.IsFinite: true, Visibility: >= 0.5 } place)
            {
                continue;
            }

            var error = proposed.FilmToCrop.Apply(place.Position - truth);
            if (SquareRoot.Of(proposed.FilmToCrop.Apply(spread)).Whiten(error) is { } white)
            {
                white *= Math.Min(1, Longest / Math.Max(1e-9, white.Length));
                (z[2 * i], z[(2 * i) + 1]) = (white.X, white.Y);
            }
        }

        return z;
    }

    private static (Matrix<double> Loadings, Covariance[] Own) Factors(Matrix<double> moment, int moves)
    {
        var own = new Covariance[moment.RowCount / 2];
        var loadings = Matrix<double>.Build.Dense(moment.RowCount, moves);
        for (var i = 0; i < own.Length; i++)
        {
            own[i] = Block(moment, i) * 0.5;
        }

        for (var round = 0; round < Rounds; round++)
        {
            var reduced = moment.Clone();
            for (var i = 0; i < own.Length; i++)
            {
                reduced[2 * i, 2 * i] -= own[i].XX;
                reduced[2 * i, (2 * i) + 1] -= own[i].XY;
                reduced[(2 * i) + 1, 2 * i] -= own[i].XY;
                reduced[(2 * i) + 1, (2 * i) + 1] -= own[i].YY;
            }

            var eigen = reduced.Evd(Symmetricity.Symmetric);
            for (var m = 0; m < moves; m++)
            {
                var column = moment.RowCount - 1 - m;
                loadings.SetColumn(m, eigen.EigenVectors.Column(column) * Math.Sqrt(Math.Max(0, eigen.EigenValues[column].Real)));
            }

            var shared = loadings.TransposeAndMultiply(loadings);
            for (var i = 0; i < own.Length; i++)
            {
                own[i] = AtLeast(Block(moment, i), Block(shared, i));
            }
        }

        return (loadings, own);
    }

    private static Covariance Block(Matrix<double> matrix, int i) =>
        new(matrix[2 * i, 2 * i], matrix[2 * i, (2 * i) + 1], matrix[(2 * i) + 1, (2 * i) + 1]);

    /// <summary>What is left of the whole beside the shared part, no eigenvalue below its least share.</summary>
    private static Covariance AtLeast(Covariance whole, Covariance shared)
    {
        var (xx, xy, yy) = (whole.XX - shared.XX, whole.XY - shared.XY, whole.YY - shared.YY);
        var floor = LeastOwn * (whole.XX + whole.YY) / 2;
        var (mean, half) = ((xx + yy) / 2, (xx - yy) / 2);
        var radius = Math.Sqrt((half * half) + (xy * xy));
        var (low, high) = (Math.Max(floor, mean - radius), Math.Max(floor, mean + radius));
        if (radius < 1e-12)
        {
            return new Covariance(low, 0, low);
        }

        var (middle, half2) = ((low + high) / 2, (high - low) / 2);
        return new Covariance(middle + (half2 * half / radius), half2 * xy / radius, middle - (half2 * half / radius));
    }
}
