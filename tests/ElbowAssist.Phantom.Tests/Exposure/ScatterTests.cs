using ElbowAssist.Phantom.Exposure.Chain;
using ElbowAssist.Phantom.Exposure.Settings;
using ElbowAssist.Phantom.Rendering;

namespace ElbowAssist.Phantom.Tests.Exposure;

public sealed class ScatterTests
{
    // Own Monte Carlo run over water cylinders, 3 mm Al, 55 to 65 kV, no grid, field 18 × 20 cm: 0.50–0.53 at 5 cm,
    // 0.80 at 7 cm, 1.12–1.17 at 9 cm, 15 % model error.
    [Theory]
    [InlineData(50, 0.515)]
    [InlineData(70, 0.80)]
    [InlineData(90, 1.145)]
    public void HomogeneousLimb_ScattersAsTheMonteCarloRun(double thicknessMm, double expected) =>
        Assert.Equal(expected, ScatterField.Ratio(thicknessMm), 0.15 * expected);

    [Fact]
    public void ScatterToPrimaryRatio_RisesBehindBone()
    {
        var paths = new PathImage(96, 96);
        var primary = new ImagePlane().Resize(96, 96);
        for (var i = 0; i < primary.Count; i++)
        {
            var isBone = i % 96 is > 40 and < 56;
            paths.Soft[i] = 60;
            paths.Bone[i] = isBone ? 8 : 0;
            primary.Pixels[i] = isBone ? 0.1f : 0.25f;
        }

        var scatter = new ImagePlane();
        new ScatterField(new GaussianBlur()).Compute(paths, primary, 1.5, new BeamSettings(), scatter);
        double Ratio(int x) => scatter.Pixels[(48 * 96) + x] / primary.Pixels[(48 * 96) + x];
        Assert.InRange(Ratio(48) / Ratio(10), 1.5, 3);
    }
}
