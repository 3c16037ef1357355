using ElbowAssist.Anatomy;
using ElbowAssist.Phantom.Sampling;

namespace ElbowAssist.Phantom.Growth;

/// <summary>
/// Draws how far the centres of an elbow have come at an age. Ages of appearance and fusion: medians of 1031 scored
/// elbows (Stull and Corron, Forensic Sciences 2022, doi 10.3390/forensicsci2010003), shifted together by a skeletal age
/// difference and each alone, so that their order stays coherent. Sizes of nuclei are estimates.
/// </summary>
internal static class GrowthSampler
{
    /// <summary>True if every physis of the elbow is closed at an age, whatever is drawn.</summary>
    public static bool Finished(Sex sex, double ageYears) => ageYears > (sex == Sex.Male ? 17.5 : 15.5);

    /// <summary>Draws the state of growth.</summary>
    /// <param name="r">Random stream.</param>
    /// <param name="sex">Sex.</param>
    /// <param name="age">Age, years.</param>
    /// <param name="breadth">Breadth of the distal humeral metaphysis, mm.</param>
    /// <param name="radiusBreadth">Breadth of the proximal radial metaphysis, mm.</param>
    public static GrowthState Sample(CounterRandom r, Sex sex, double age, double breadth, double radiusBreadth)
    {
        var skeletal = age + r.Normal(0, age < 3 ? 0.3 : 0.8);
        double Since(double boys, double girls, double alone) =>
            skeletal - (sex == Sex.Male ? boys : girls) + r.Normal(0, alone);
        var capitellum = Since(0.6, 0.4, 0.12);
        var radius = Since(5.4, 4.5, 0.4);
        var medial = Since(6.2, 3.7, 0.4);
        var trochlea = Math.Min(Since(8.1, 6.6, 0.4), medial - 0.3);
        var olecranon = Since(9.4, 7.1, 0.4);
        var lateral = Since(10.0, 8.2, 0.3);
        var composite = Since(10.6, 9.2, 0.3);
        var block = Progress(Since(11.8, 9.7, 0.3), 2.1);
        var medialFusion = Progress(Since(13.3, 11.3, 0.3), 1.0);
        var radiusFusion = Progress(Since(11.3, 8.6, 0.3), 2.0);
        var olecranonFusion = Progress(Since(13.2, 10.7, 0.3), 1.1);
        var cartilage = 0.42 * breadth;
        var distal = Table(age, (1, 3.5), (3, 2.9), (5, 2.7), (8, 2.3), (10, 2.1), (13, 1.7));
        var gap = Table(age, (0.5, 3.0), (1, 2.2), (2, 2.0), (3, 1.8), (5, 1.5), (8, 1.2), (10, 1.0), (14, 0.6)) * (1 - block);
        var height = Math.Max((0.9 * cartilage) - distal - gap, 1.5);
        var share = Table(skeletal, (0.5, 0.3), (0.75, 0.45), (1, 0.55), (2, 0.68), (3, 0.75), (5, 0.82), (8, 0.88), (13, 0.94));
        var diameter = capitellum > 0 ? share * cartilage * r.Normal(1, age < 2 ? 0.18 : 0.07) : 0;
        var wide = Table(age, (2, 1.0), (5, 1.15), (9, 1.35));
        return new GrowthState
        {
            CartilageDiameter = cartilage,
            PhysisTiltDegrees = 90 - r.Normal(50, 6, 32, 68),
            PhysisSlopeDegrees = r.Normal(18, 4.2, 6, 30),
            MedialSlopeDegrees = r.Uniform(-3, 6),
            PhysisGap = Math.Max(gap, 0.35),
            Composite = composite > 0,
            JointBlockFused = block >= 1,
            CapitellumDiameter = diameter,
            CapitellumHeight = Math.Min(height, diameter * 0.78),
            CapitellumWidth = diameter * wide * r.Normal(1, 0.05),
            CapitellumForward = diameter * ((0.25 * Math.Exp(-age / 8)) + r.Normal(0, 0.09)) * 0.6,
            CapitellumMedial = diameter * ((0.33 * Math.Exp(-age / 20)) + r.Normal(0, 0.12)) * 0.6,
            CapitellumFlatness = Table(age, (0.7, 0), (1.2, 0.3), (2.5, 1)),
            Trochlea = trochlea > 0 ? Math.Min(1, 0.3 + (0.35 * trochlea)) : 0,
            MedialEpicondyle = medial > 0 ? Math.Min(1, 0.25 + (0.13 * medial)) : 0,
            MedialEpicondyleFused = medialFusion >= 1,
            LateralEpicondyle = lateral > 0 && composite <= 0 ? Math.Min(1, 0.4 + (0.4 * lateral)) : 0,
            RadialHeadShare = radius > 0 ? Math.Min(Table(radius, (0, 0.35), (1, 0.6), (3, 0.85), (5, 1.0)), 1.0) : 0,
            RadialHeadThickness = Table(radius, (0, 1.2), (1, 2), (3, 2.8), (5, 3.6), (7, 4.4)),
            RadialPhysisGap = Math.Max(Table(radius, (0, 1.5), (3, 1.0), (6, 0.7)) * (1 - radiusFusion), 0.3),
            RadialHeadHeight = 0.42 * radiusBreadth,
            RadialHeadFused = radiusFusion >= 1,
            OlecranonCap = Table(age, (1, 10), (3, 9), (6, 7.5), (9, 5.5), (12, 3.5), (15, 3)) * r.Normal(1, 0.12),
            Olecranon = olecranon > 0 ? Math.Min(1, 0.3 + (0.3 * olecranon)) : 0,
            OlecranonSplit = r.Chance(0.35),
            OlecranonFused = olecranonFusion >= 1,
        };
    }

    /// <summary>Linear between given places, constant beyond them.</summary>
    internal static double Table(double x, params ReadOnlySpan<(double X, double Y)> places)
    {
        if (x <= places[0].X)
        {
            return places[0].Y;
        }

        for (var i = 1; i < places.Length; i++)
        {
            if (x <= places[i].X)
            {
                var share = (x - places[i - 1].X) / (places[i].X - places[i - 1].X);
                return places[i - 1].Y + (share * (places[i].Y - places[i - 1].Y));
            }
        }

        return places[^1].Y;
    }

    private static double Progress(double since, double duration) => Math.Clamp(since / duration, 0, 1);
}
