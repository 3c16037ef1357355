using ElbowAssist.Geometry;
using static ElbowAssist.Anatomy.Landmarks.LandmarkNames;

namespace ElbowAssist.Anatomy.Measurements.Construction;

/// <summary>The fits of one AP film that several measurements share.</summary>
internal sealed class ApFits
{
    /// <summary>The lower levels lie in the flare of the metaphysis, which need not widen evenly: some 2 % of the stretch (choice of this project).</summary>
    private const double Flare = 0.02;

    private readonly FittedAxis shaft;
    private readonly FittedAxis neck;
    private readonly FittedAxis radialShaft;
    private readonly FittedAxis ulna;
    private readonly Cortices humerus;
    private readonly Cortices radius;

    public ApFits(LaidLandmarks laid)
    {
        shaft = FittedAxis.Between(laid, Enumerable.Range(1, 4).Select(n => (HumerusLateral(n), HumerusMedial(n))), Flare);
        neck = FittedAxis.Between(laid, Enumerable.Range(1, 2).Select(n => (RadiusLateral(n), RadiusMedial(n))), 0);
        radialShaft = FittedAxis.Between(laid, Enumerable.Range(3, 2).Select(n => (RadiusLateral(n), RadiusMedial(n))), 0);
        ulna = FittedAxis.Between(laid, Enumerable.Range(1, 3).Select(n => (UlnaLateral(n), UlnaMedial(n))), Flare);
        humerus = new Cortices(laid, Enumerable.Range(1, 4).Select(HumerusLateral), Enumerable.Range(1, 4).Select(HumerusMedial));
        radius = new Cortices(laid, Enumerable.Range(1, 4).Select(RadiusLateral), Enumerable.Range(1, 4).Select(RadiusMedial));
    }

    /// <summary>Every shared construction laid through these points.</summary>
    public ApGeometry Lay(ReadOnlySpan<Point> points) => new(points)
    {
        Shaft = shaft.Lay(points),
        Neck = neck.Lay(points),
        RadialShaft = radialShaft.Lay(points),
        Ulna = ulna.Lay(points),
        Lateral = humerus.Across(points),
        RadialLateral = radius.Across(points),
    };
}
