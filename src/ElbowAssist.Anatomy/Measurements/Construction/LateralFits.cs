using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Geometry;
using static ElbowAssist.Anatomy.Landmarks.LandmarkNames;

namespace ElbowAssist.Anatomy.Measurements.Construction;

/// <summary>The fits of one lateral film that several measurements share.</summary>
internal sealed class LateralFits
{
    /// <summary>
    /// Departure of the anterior humeral cortex from a straight line over the stretch fitted. From the crossings of one
    /// adult bone by lines along 30–70, 40–90 and 60–120 mm: a sagitta of some 0.5 % of a stretch of one shaft width.
    /// </summary>
    private const double HumeralBow = 0.005;

    private readonly FittedAxis shaft;
    private readonly FittedAxis anteriorDistal;
    private readonly FittedAxis anteriorShaft;
    private readonly FittedAxis neck;
    private readonly FittedAxis radialShaft;
    private readonly FittedAxis ulna;
    private readonly FittedCircle trochlea;
    private readonly Cortices humerus;
    private readonly Cortices radius;

    public LateralFits(LaidLandmarks laid)
    {
        Set = laid.Set;
        shaft = FittedAxis.Between(laid, Enumerable.Range(1, 5).Select(n => (HumerusAnterior(n), HumerusPosterior(n))), HumeralBow);
        anteriorDistal = FittedAxis.Through(laid, Enumerable.Range(3, 3).Select(HumerusAnterior), HumeralBow);
        anteriorShaft = FittedAxis.Through(laid, Enumerable.Range(1, 3).Select(HumerusAnterior), HumeralBow);
        neck = FittedAxis.Between(laid, Enumerable.Range(1, 2).Select(n => (RadiusAnterior(n), RadiusPosterior(n))), 0);
        radialShaft = FittedAxis.Between(laid, Enumerable.Range(3, 2).Select(n => (RadiusAnterior(n), RadiusPosterior(n))), 0);
        ulna = FittedAxis.Through(laid, Enumerable.Range(1, 3).Select(UlnaPosterior), HumeralBow);
        Outline = new CapitellarOutline(laid);
        trochlea = FittedCircle.Through(laid, Enumerable.Range(1, 5).Select(TrochleaLip));
        humerus = new Cortices(laid, Enumerable.Range(1, 5).Select(HumerusAnterior), Enumerable.Range(1, 5).Select(HumerusPosterior));
        radius = new Cortices(laid, Enumerable.Range(1, 4).Select(RadiusAnterior), Enumerable.Range(1, 4).Select(RadiusPosterior));
    }

    public LandmarkSet Set { get; }

    public CapitellarOutline Outline { get; }

    /// <summary>Every shared construction laid through these points.</summary>
    public LateralGeometry Lay(ReadOnlySpan<Point> points) => new(points, this)
    {
        Shaft = shaft.Lay(points),
        AnteriorDistal = anteriorDistal.Lay(points),
        AnteriorShaft = anteriorShaft.Lay(points),
        Neck = neck.Lay(points),
        RadialShaft = radialShaft.Lay(points),
        Ulna = ulna.Lay(points),
        Capitellum = Outline.Circle(points),
        Trochlea = trochlea.Lay(points),
        Anterior = humerus.Across(points),
        Flexor = radius.Across(points),
    };
}
