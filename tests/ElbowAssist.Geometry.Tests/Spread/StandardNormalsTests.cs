using ElbowAssist.Geometry.Spread;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Random;

namespace ElbowAssist.Geometry.Tests.Spread;

public sealed class StandardNormalsTests
{
    [Theory] // Math.NET Numerics 5, Normal.Samples with the same generator: the same bits, draw after draw.
    [InlineData(1)]
    [InlineData(7)]
    [InlineData(58)]
    [InlineData(106)]
    public void Draws_AreThoseOfMathNet(int count)
    {
        var other = new Xoshiro256StarStar(5, threadSafe: false);
        var source = new StandardNormals(new Xoshiro256StarStar(5, threadSafe: false), count);
        double[] ours = new double[count], theirs = new double[count];
        for (var draw = 0; draw < 500; draw++)
        {
            source.Draw(ours);
            Normal.Samples(other, theirs, 0, 1);
            Assert.Equal(theirs, ours);
        }
    }
}
