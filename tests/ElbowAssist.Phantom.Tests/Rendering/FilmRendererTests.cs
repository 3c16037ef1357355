using ElbowAssist.Anatomy;
using ElbowAssist.Phantom.Pose;
using ElbowAssist.Phantom.Rendering;
using ElbowAssist.Phantom.Rendering.Field;

namespace ElbowAssist.Phantom.Tests.Rendering;

public sealed class FilmRendererTests
{
    /// <summary>
    /// Soft tissue is filled in between walked rays. What an X-ray sees of it at about 35 keV (0.030 a millimetre, fat
    /// 0.026: ICRU-44 coefficients from the NIST tables, rounded) stays far below the noise of a film, 0.03 at the usual dose.
    /// </summary>
    [Theory]
    [InlineData(3UL, View.Lateral)]
    [InlineData(8UL, View.Ap)]
    public void FilledInSoftTissue_AttenuatesLikeWalkedRays(ulong seed, View view)
    {
        const int size = 320;
        var options = new SimulationOptions { Adequacy = Adequacy.Good };
        var geometry = FilmSetup.OfFilm(Simulation.Sample(seed, options), view, size, options).Geometry;
        var image = FilmRenderer.Render(in geometry, size, size);
        var off = new List<double>();
        for (var y = 1; y < size; y += 3)
        {
            for (var x = 1; x < size; x += 3)
            {
                var walked = RayIntegrator.Trace(in geometry, x + 0.5f, y + 0.5f);
                var i = (y * size) + x;
                off.Add(Math.Abs((0.030 * (walked.Soft - image.Soft[i])) + (0.026 * (walked.Fat - image.Fat[i]))));
            }
        }

        off.Sort();
        Assert.InRange(off[(int)(0.99 * off.Count)], 0, 0.006);
        Assert.InRange(off[(int)(0.999 * off.Count)], 0, 0.02);
    }
}
