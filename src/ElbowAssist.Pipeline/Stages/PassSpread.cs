using System.Buffers;
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
    /// <param name="passes">The passes.</param>
    /// <param name="landmarks">Merged landmarks in the order wanted; rows of null ones stay zero.</param>
    /// <param name="names">Landmarks in the order of the proposals.</param>
    public static JointCovariance Joint(
        IReadOnlyList<PlacedPass> passes, IReadOnlyList<MergedProposal?> landmarks, IReadOnlyList<string> names)
    {
        var size = 2 * landmarks.Count;
        using var rented = MemoryPool<double>.Shared.Rent(size * size);
        var matrix = rented.Memory.Span[..(size * size)];
        matrix.Clear();
        var channel = names.Select((n, i) => (n, i)).ToDictionary(p => p.n, p => p.i, StringComparer.Ordinal);
        var departure = new double[size];
        for (var n = 0; n < passes.Count; n++)
        {
            Array.Clear(departure);
            for (var i = 0; i < landmarks.Count; i++)
            {
                if (landmarks[i] is not { } landmark || !landmark.Passes.Contains(n))
                {
                    continue;
                }

                var proposal = passes[n].Pass.Proposals[channel[landmark.Name]];
                Add(matrix, size, i, passes[n].CropToFilm.Apply(proposal.Spread ?? Covariance.Zero) * (1.0 / landmark.Passes.Count));
                if (proposal.Position.IsFinite)
                {
                    var moved = (passes[n].CropToFilm.Apply(proposal.Position) - landmark.Position) / Math.Sqrt(landmark.Passes.Count);
                    (departure[2 * i], departure[(2 * i) + 1]) = (moved.X, moved.Y);
                }
            }

            AddOuter(matrix, size, departure);
        }

        return JointCovariance.TryCreate(landmarks.Count, matrix, out var joint, out var problem)
            ? joint
            : throw new InvalidOperationException(problem);
    }

    private static void Add(Span<double> matrix, int size, int point, Covariance own)
    {
        var (x, y) = (2 * point, (2 * point) + 1);
        matrix[(x * size) + x] += own.XX;
        matrix[(x * size) + y] += own.XY;
        matrix[(y * size) + x] += own.XY;
        matrix[(y * size) + y] += own.YY;
    }

    private static void AddOuter(Span<double> matrix, int size, double[] departure)
    {
        for (var row = 0; row < size; row++)
        {
            for (var column = 0; column < size; column++)
            {
                matrix[(row * size) + column] += departure[row] * departure[column];
            }
        }
    }
}
