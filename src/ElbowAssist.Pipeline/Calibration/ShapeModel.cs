using ElbowAssist.Geometry;
using MathNet.Numerics.LinearAlgebra;

namespace ElbowAssist.Pipeline.Calibration;

/// <summary>
/// The shapes a group of landmarks takes, whatever their place, turn and size: mean shape and main modes of true landmarks
/// (point distribution model, Cootes, Taylor, Cooper and Graham, Comput Vis Image Underst 1995;61:38-59).
/// </summary>
/// <param name="Name">Bone, e.g. <c>humerus</c>.</param>
/// <param name="Landmarks">Landmark names.</param>
/// <param name="Mean">Mean shape as x₁, y₁, x₂, …, root mean square distance from its centre 1.</param>
/// <param name="Modes">Modes, each as long as the mean, scaled to one standard deviation.</param>
/// <param name="Residual">Variance of a coordinate beside the modes.</param>
/// <param name="Films">Films it rests on.</param>
public sealed record ShapeModel(
    string Name, IReadOnlyList<string> Landmarks, double[] Mean, IReadOnlyList<double[]> Modes, double Residual, int Films)
{
    /// <summary>Fewest landmarks from which a shape can be told from a place, a turn and a size.</summary>
    public const int Fewest = 4;

    /// <summary>Root mean square distance from the shapes that occur, in standard deviations; null with too few landmarks.</summary>
    /// <param name="placed">Positions by landmark name, in any frame that is not mirrored against the canonical pose.</param>
    public double? Distance(IReadOnlyDictionary<string, Point> placed)
    {
        ArgumentNullException.ThrowIfNull(placed);
        int[] seen = [.. Enumerable.Range(0, Landmarks.Count).Where(i => placed.ContainsKey(Landmarks[i]))];
        if (seen.Length < Fewest)
        {
            return null;
        }

        var onto = Procrustes.Onto([.. seen.Select(i => placed[Landmarks[i]])], [.. seen.Select(MeanOf)]);
        if (onto is not { } aligned)
        {
            return null;
        }

        var residuals = new double[2 * seen.Length];
        for (var i = 0; i < seen.Length; i++)
        {
            var departure = aligned.Apply(placed[Landmarks[seen[i]]]) - MeanOf(seen[i]);
            (residuals[2 * i], residuals[(2 * i) + 1]) = (departure.X, departure.Y);
        }

        // Woodbury: (M·Mᵀ + r·I)⁻¹ = (I − M·(r·I + MᵀM)⁻¹·Mᵀ) / r
        var r = Vector<double>.Build.Dense(residuals);
        var square = r.DotProduct(r);
        if (Modes.Count > 0)
        {
            var modes = Matrix<double>.Build.Dense(residuals.Length, Modes.Count, (row, m) => Modes[m][(2 * seen[row / 2]) + (row % 2)]);
            var inner = modes.TransposeThisAndMultiply(modes) + (Residual * Matrix<double>.Build.DenseIdentity(Modes.Count));
            var along = modes.TransposeThisAndMultiply(r);
            square -= along.DotProduct(inner.Cholesky().Solve(along));
        }

        return Math.Sqrt(Math.Max(0, square) / Residual / (residuals.Length - 4));
    }

    private Point MeanOf(int landmark) => new(Mean[2 * landmark], Mean[(2 * landmark) + 1]);
}
