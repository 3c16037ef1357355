using MathNet.Numerics.LinearAlgebra.Double;

namespace ElbowAssist.Phantom.Mesh.Registration;

/// <summary>
/// Robust least squares with a normal prior, by the method of Levenberg and Marquardt: minimises
/// Σ w ρ(rᵢ(x)) + Σ (xⱼ/sⱼ)², with Huber's ρ. The Jacobian is taken by differences.
/// </summary>
internal sealed class LeastSquares
{
    private const double Difference = 1e-3;
    private const double Enough = 1e-4;
    private readonly int residualCount;
    private readonly Func<double[], double[]> residuals;
    private readonly double weight;
    private readonly double huber;
    private readonly double[] spreads;

    /// <param name="residualCount">Number of residuals.</param>
    /// <param name="residuals">Residuals at a place; called from several threads.</param>
    /// <param name="weight">Weight of each residual against the prior.</param>
    /// <param name="huber">Residual beyond which the loss grows linearly.</param>
    /// <param name="spreads">Standard deviation of the prior of each unknown about 0.</param>
    public LeastSquares(int residualCount, Func<double[], double[]> residuals, double weight, double huber, double[] spreads) =>
        (this.residualCount, this.residuals, this.weight, this.huber, this.spreads) = (residualCount, residuals, weight, huber, spreads);

    /// <summary>Searches from a start.</summary>
    /// <returns>The unknowns and their cost.</returns>
    public (double[] X, double Cost) Minimise(double[] start, int mostSteps)
    {
        var x = start;
        var r = residuals(x);
        var cost = Cost(x, r);
        var damping = 1e-2;
        for (var step = 0; step < mostSteps; step++)
        {
            var (normal, gradient) = Equations(x, r);
            var improved = false;
            for (var attempt = 0; attempt < 6 && !improved; attempt++)
            {
                var damped = normal.Clone();
                for (var j = 0; j < x.Length; j++)
                {
                    damped[j, j] += damping * normal[j, j];
                }

                var move = damped.Cholesky().Solve(gradient);
                var next = x.Select((v, j) => v - move[j]).ToArray();
                var nextResiduals = residuals(next);
                var nextCost = Cost(next, nextResiduals);
                if (nextCost < cost)
                {
                    improved = cost - nextCost > Enough * cost;
                    (x, r, cost) = (next, nextResiduals, nextCost);
                    damping *= 0.3;
                    break;
                }

                damping *= 4;
            }

            if (!improved)
            {
                break;
            }
        }

        return (x, cost);
    }

    private double Cost(double[] x, double[] r)
    {
        var sum = 0.0;
        foreach (var value in r)
        {
            var size = Math.Abs(value);
            sum += weight * (size < huber ? size * size : huber * ((2 * size) - huber));
        }

        for (var j = 0; j < x.Length; j++)
        {
            sum += x[j] * x[j] / (spreads[j] * spreads[j]);
        }

        return sum;
    }

    private (MathNet.Numerics.LinearAlgebra.Matrix<double> Normal, DenseVector Gradient) Equations(double[] x, double[] r)
    {
        var columns = new double[x.Length][];
        Parallel.For(0, x.Length, j =>
        {
            var moved = (double[])x.Clone();
            moved[j] += Difference;
            columns[j] = residuals(moved);
        });
        var jacobian = new DenseMatrix(residualCount, x.Length);
        var right = new DenseVector(residualCount);
        for (var i = 0; i < residualCount; i++)
        {
            var size = Math.Abs(r[i]);
            var root = Math.Sqrt(weight * (size < huber ? 1 : huber / size));
            right[i] = root * r[i];
            for (var j = 0; j < x.Length; j++)
            {
                jacobian[i, j] = root * (columns[j][i] - r[i]) / Difference;
            }
        }

        var normal = jacobian.TransposeThisAndMultiply(jacobian);
        var gradient = (DenseVector)jacobian.TransposeThisAndMultiply(right);
        for (var j = 0; j < x.Length; j++)
        {
            var prior = 1 / (spreads[j] * spreads[j]);
            normal[j, j] += prior;
            gradient[j] += prior * x[j];
        }

        return (normal, gradient);
    }
}
