using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Geometry;
using ElbowAssist.Geometry.Spread;
using ElbowAssist.Models.Merging;

namespace ElbowAssist.Pipeline.Stages;

/// <summary>
/// Joint covariance of the landmarks of a film: each landmark's mean covariance within passes on the diagonal, plus the
/// covariance of all landmarks between passes, which carries how neighbouring landmarks move together.
/// </summary>
internal static class PassSpread
{
    /// <param name="names">Landmarks in the order of the proposals.</param>
    /// <param name="passes">The passes.</param>
    /// <param name="landmarks">Landmarks in the order wanted; rows of those without position stay zero.</param>
    public static JointCovariance Joint(IReadOnlyList<string> names, IReadOnlyList<PlacedPass> passes, IReadOnlyList<Landmark> landmarks)
    {
        var size = 2 * landmarks.Count;
        var matrix = new double[size * size];
        var channel = names.Select((n, i) => (n, i)).ToDictionary(p => p.n, p => p.i, StringComparer.Ordinal);
        foreach (var pass in passes)
        {
            var departure = new double[size];
            for (var i = 0; i < landmarks.Count; i++)
            {
                if (landmarks[i].Position is not { } mean)
                {
                    continue;
                }

                var proposal = pass.Pass.Proposals[channel[landmarks[i].Name]];
                Add(matrix, size, i, pass.CropToFilm.Apply(proposal.Spread ?? Covariance.Zero) * (1.0 / passes.Count));
                if (proposal.Position.IsFinite)
                {
                    var moved = pass.CropToFilm.Apply(proposal.Position) - mean;
                    (departure[2 * i], departure[(2 * i) + 1]) = (moved.X, moved.Y);
                }
            }

            AddOuter(matrix, size, departure, 1.0 / passes.Count);
        }

        return JointCovariance.TryCreate(landmarks.Count, matrix, out var joint, out var problem)
            ? joint
            : throw new InvalidOperationException(problem);
    }

    private static void Add(double[] matrix, int size, int point, Covariance own)
    {
        var (x, y) = (2 * point, (2 * point) + 1);
        matrix[(x * size) + x] += own.XX;
        matrix[(x * size) + y] += own.XY;
        matrix[(y * size) + x] += own.XY;
        matrix[(y * size) + y] += own.YY;
    }

    private static void AddOuter(double[] matrix, int size, double[] departure, double weight)
    {
        for (var row = 0; row < size; row++)
        {
            for (var column = 0; column < size; column++)
            {
                matrix[(row * size) + column] += weight * departure[row] * departure[column];
            }
        }
    }
}
