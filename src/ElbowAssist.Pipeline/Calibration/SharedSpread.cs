using System.Buffers;
using ElbowAssist.Geometry;
using ElbowAssist.Geometry.Spread;
using ElbowAssist.Models.Merging;

namespace ElbowAssist.Pipeline.Calibration;

/// <summary>
/// How landmarks err together, in units of each landmark's own stated spread: errors whitened by the square root of that
/// spread, in the canonical pose, have the covariance Λ·Λᵀ + Ψ. The few columns of Λ are moves that landmarks share (an
/// outline shifted as a whole, a shaft turned); the 2×2 blocks of Ψ are what each keeps for itself.
/// </summary>
/// <param name="Landmarks">Landmark names; row 2i and 2i + 1 of the loadings belong to name i.</param>
/// <param name="Loadings">Λ, two rows a landmark, one column a shared move.</param>
/// <param name="Own">Ψ by landmark as xx, xy, yy.</param>
/// <param name="Films">Films it rests on.</param>
public sealed record SharedSpread(
    IReadOnlyList<string> Landmarks, IReadOnlyList<double[]> Loadings, IReadOnlyList<double[]> Own, int Films)
{
    /// <summary>The joint covariance of a film's landmarks in squared film pixels.</summary>
    /// <param name="landmarks">Merged landmarks in the order wanted; rows of null ones, or ones without spread, stay zero.</param>
    /// <param name="filmToCrop">The canonical pose.</param>
    public JointCovariance Joint(IReadOnlyList<MergedProposal?> landmarks, Similarity filmToCrop)
    {
        ArgumentNullException.ThrowIfNull(landmarks);
        var index = Landmarks.Select((n, i) => (n, i)).ToDictionary(p => p.n, p => p.i, StringComparer.Ordinal);
        var moves = Loadings.Count == 0 ? 0 : Loadings[0].Length;
        var size = 2 * landmarks.Count;
        var loaded = new double[size, moves];
        using var rented = MemoryPool<double>.Shared.Rent(size * size);
        var matrix = rented.Memory.Span[..(size * size)];
        matrix.Clear();
        for (var i = 0; i < landmarks.Count; i++)
        {
            if (landmarks[i] is not { Spread: { } spread } landmark)
            {
                continue;
            }

            var known = index.TryGetValue(landmark.Name, out var row);
            var root = SquareRoot.Of(filmToCrop.Apply(spread));
            var back = filmToCrop.Inverse;
            Vector x = back.Apply(root.Column(0)), y = back.Apply(root.Column(1));
            double[] own = known ? Own[row] : [1, 0, 1];
            Add(matrix, size, i, x, y, own);
            for (var m = 0; known && m < moves; m++)
            {
                var (a, b) = (Loadings[2 * row][m], Loadings[(2 * row) + 1][m]);
                (loaded[2 * i, m], loaded[(2 * i) + 1, m]) = ((a * x.X) + (b * y.X), (a * x.Y) + (b * y.Y));
            }
        }

        for (var r = 0; r < size; r++)
        {
            for (var c = 0; c < size; c++)
            {
                for (var m = 0; m < moves; m++)
                {
                    matrix[(r * size) + c] += loaded[r, m] * loaded[c, m];
                }
            }
        }

        return JointCovariance.TryCreate(landmarks.Count, matrix, out var joint, out var problem)
            ? joint
            : throw new InvalidOperationException(problem);
    }

    private static void Add(Span<double> matrix, int size, int point, Vector x, Vector y, double[] own)
    {
        var (r, c) = (2 * point, (2 * point) + 1);
        var (xx, xy, yy) = (own[0], own[1], own[2]);
        matrix[(r * size) + r] += (xx * x.X * x.X) + (2 * xy * x.X * y.X) + (yy * y.X * y.X);
        matrix[(c * size) + c] += (xx * x.Y * x.Y) + (2 * xy * x.Y * y.Y) + (yy * y.Y * y.Y);
        var cross = (xx * x.X * x.Y) + (xy * ((x.X * y.Y) + (y.X * x.Y))) + (yy * y.X * y.Y);
        matrix[(r * size) + c] += cross;
        matrix[(c * size) + r] += cross;
    }
}
