using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Anatomy.Measurements;
using ElbowAssist.Phantom.Pose;

namespace ElbowAssist.Phantom.Tests.Truth;

/// <summary>Measurements laid through exact landmarks of uninjured elbows against published distributions.</summary>
public sealed class PublishedSharesTests
{
    /// <summary>
    /// Crossing of the anterior humeral line in 60 normal elbows of 4 months to 9 years: anterior third 31 %, middle 52 %,
    /// posterior 18 % (Herman et al., J Pediatr Orthop 2009). The band allows for sixty elbows and for the sample here.
    /// </summary>
    [Fact]
    public void AnteriorHumeralLine_OfChildren_CrossesTheThirdsAsPublished()
    {
        var positions = Values(0.8, 9, View.Lateral, "anterior-humeral-line.position");
        Assert.InRange(Share(positions, p => p < 1 / 3.0), 0.31 - 0.14, 0.31 + 0.14);
        Assert.InRange(Share(positions, p => p is >= 1 / 3.0 and <= 2 / 3.0), 0.52 - 0.14, 0.52 + 0.14);
    }

    /// <summary>Baumann angle, shaft against the lateral condylar physis: 72 ± 4 degrees in common use (from memory).</summary>
    [Fact]
    public void BaumannAngle_OfChildren_LiesAroundItsUsualMean()
    {
        var angles = Values(2, 9, View.Ap, "baumann-angle");
        Assert.InRange(angles.Average(), 68, 76);
    }

    private static List<double> Values(double from, double to, View view, string name)
    {
        var options = new SimulationOptions { FromAgeYears = from, ToAgeYears = to, InjuredShare = 0, Adequacy = Adequacy.Good };
        var values = new List<double>();
        for (ulong seed = 1; seed <= 120; seed++)
        {
            var truth = FilmSetup.OfCrop(Simulation.Sample(seed, options), view, 256, options).Truth();
            var laid = LaidLandmarks.Exact(
                LandmarkSet.Of(view)!,
                [.. truth.Landmarks.Select(l => l.Position)],
                FilmScale.Of(truth.ObjectPixelMillimetres, truth.ObjectPixelMillimetres));
            if (FilmMeasuring.Exact(laid).TryGetValue(name, out var value))
            {
                values.Add(value);
            }
        }

        return values;
    }

    private static double Share(List<double> values, Func<double, bool> condition) => values.Count(condition) / (double)values.Count;
}
