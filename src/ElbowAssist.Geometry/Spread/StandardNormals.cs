using MathNet.Numerics.Random;

namespace ElbowAssist.Geometry.Spread;

/// <summary>
/// Draws of the standard normal distribution by the polar method (Marsaglia and Bray, SIAM Rev 1964;6:260–264): the numbers
/// that Math.NET gives for the same generator, without an array for each call.
/// </summary>
/// <param name="random">Generator.</param>
/// <param name="count">Numbers of each draw.</param>
internal sealed class StandardNormals(RandomSource random, int count)
{
    // A pair of uniform numbers falls into the circle with the share π/4.
    private readonly double[] uniform = new double[(int)Math.Ceiling(count * 4 / Math.PI) is var needed && int.IsEvenInteger(needed) ? needed : needed + 1];

    /// <summary>Fills an array of that many numbers.</summary>
    public void Draw(Span<double> normals)
    {
        random.NextDoubles(uniform);
        var next = 0;
        for (var i = 0; next < normals.Length; i += 2)
        {
            var (a, b) = i < uniform.Length ? (uniform[i], uniform[i + 1]) : (random.NextDouble(), random.NextDouble());
            double x = (2 * a) - 1, y = (2 * b) - 1;
            var square = (x * x) + (y * y);
            if (square is >= 1 or 0)
            {
                continue;
            }

            var factor = Math.Sqrt(-2 * Math.Log(square) / square);
            normals[next++] = x * factor;
            if (next < normals.Length)
            {
                normals[next++] = y * factor;
            }
        }
    }
}
