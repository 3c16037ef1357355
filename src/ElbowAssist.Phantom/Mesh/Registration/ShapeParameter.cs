using ElbowAssist.Anatomy;
using ElbowAssist.Phantom.Sampling;
using ElbowAssist.Phantom.Shape;

namespace ElbowAssist.Phantom.Mesh.Registration;

/// <summary>
/// A parameter of the parametric elbow that is fitted to a mesh, with the mean and spread that it has among sampled adults:
/// they are the prior of the fit.
/// </summary>
internal sealed record ShapeParameter(
    Func<ElbowShape, double> Get, Func<ElbowShape, double, ElbowShape> Set, double Mean, double Spread)
{
    private const int Adults = 200;

    /// <summary>The parameters of the distal humerus.</summary>
    public static IReadOnlyList<ShapeParameter> Humerus() => Of(
        (s => s.Humerus.EpicondylarWidth, (s, v) => s with { Humerus = s.Humerus with { EpicondylarWidth = v } }),
        (s => s.Humerus.CapitellumRadius, (s, v) => s with { Humerus = s.Humerus with { CapitellumRadius = v } }),
        (s => s.Humerus.CapitellumTransverseRadius, (s, v) => s with { Humerus = s.Humerus with { CapitellumTransverseRadius = v } }),
        (s => s.Humerus.CapitellumZ, (s, v) => s with { Humerus = s.Humerus with { CapitellumZ = v } }),
        (s => s.Humerus.CapitellumX, (s, v) => s with { Humerus = s.Humerus with { CapitellumX = v } }),
        (s => s.Humerus.CapitellumY, (s, v) => s with { Humerus = s.Humerus with { CapitellumY = v } }),
        (s => s.Humerus.MedialLipRadius, (s, v) => s with { Humerus = s.Humerus with { MedialLipRadius = v } }),
        (s => s.Humerus.GrooveRadius, (s, v) => s with { Humerus = s.Humerus with { GrooveRadius = v } }),
        (s => s.Humerus.LateralLipRadius, (s, v) => s with { Humerus = s.Humerus with { LateralLipRadius = v } }),
        (s => s.Humerus.ArticularWidth, (s, v) => s with { Humerus = s.Humerus with { ArticularWidth = v } }),
        (s => s.Humerus.WaistAp, (s, v) => s with { Humerus = s.Humerus with { WaistAp = v } }),
        (s => s.Humerus.ShaftAp, (s, v) => s with { Humerus = s.Humerus with { ShaftAp = v } }),
        (s => s.Humerus.DistalAp, (s, v) => s with { Humerus = s.Humerus with { DistalAp = v } }),
        (s => s.Humerus.ShaftMl, (s, v) => s with { Humerus = s.Humerus with { ShaftMl = v } }),
        (s => s.Humerus.FlareMl, (s, v) => s with { Humerus = s.Humerus with { FlareMl = v } }),
        (s => s.Humerus.ForwardReach, (s, v) => s with { Humerus = s.Humerus with { ForwardReach = v } }),
        (s => s.Humerus.AnteriorLineShare, (s, v) => s with { Humerus = s.Humerus with { AnteriorLineShare = v } }),
        (s => s.Humerus.Bow, (s, v) => s with { Humerus = s.Humerus with { Bow = v } }),
        (s => s.Humerus.ShaftZ, (s, v) => s with { Humerus = s.Humerus with { ShaftZ = v } }),
        (s => s.Humerus.DistalZ, (s, v) => s with { Humerus = s.Humerus with { DistalZ = v } }),
        (s => s.Humerus.OlecranonFossaLength, (s, v) => s with { Humerus = s.Humerus with { OlecranonFossaLength = v } }),
        (s => s.Humerus.OlecranonFossaWidth, (s, v) => s with { Humerus = s.Humerus with { OlecranonFossaWidth = v } }),
        (s => s.Humerus.OlecranonFossaHeight, (s, v) => s with { Humerus = s.Humerus with { OlecranonFossaHeight = v } }),
        (s => s.Humerus.CoronoidFossaLength, (s, v) => s with { Humerus = s.Humerus with { CoronoidFossaLength = v } }),
        (s => s.Humerus.CoronoidFossaWidth, (s, v) => s with { Humerus = s.Humerus with { CoronoidFossaWidth = v } }),
        (s => s.Humerus.CondylarTiltDegrees, (s, v) => s with { Humerus = s.Humerus with { CondylarTiltDegrees = v } }),
        (s => s.Humerus.WaistHeight, (s, v) => s with { Humerus = s.Humerus with { WaistHeight = v } }),
        (s => s.Humerus.RadialFossaDepth, (s, v) => s with { Humerus = s.Humerus with { RadialFossaDepth = v } }),
        (s => s.Humerus.Septum, (s, v) => s with { Humerus = s.Humerus with { Septum = v } }),
        (s => s.Humerus.MedialEpicondyleReach, (s, v) => s with { Humerus = s.Humerus with { MedialEpicondyleReach = v } }),
        (s => s.Humerus.MedialEpicondyleHeight, (s, v) => s with { Humerus = s.Humerus with { MedialEpicondyleHeight = v } }),
        (s => s.Humerus.LateralEpicondyleReach, (s, v) => s with { Humerus = s.Humerus with { LateralEpicondyleReach = v } }),
        (s => s.Humerus.LateralEpicondyleHeight, (s, v) => s with { Humerus = s.Humerus with { LateralEpicondyleHeight = v } }));

    /// <summary>The parameters of the proximal ulna.</summary>
    public static IReadOnlyList<ShapeParameter> Ulna() => Of(
        (s => s.Ulna.Scale, (s, v) => s with { Ulna = s.Ulna with { Scale = v } }),
        (s => s.Ulna.JointGap, (s, v) => s with { Ulna = s.Ulna with { JointGap = v } }),
        (s => s.Ulna.CoronoidHeight, (s, v) => s with { Ulna = s.Ulna with { CoronoidHeight = v } }),
        (s => s.Ulna.OlecranonReach, (s, v) => s with { Ulna = s.Ulna with { OlecranonReach = v } }),
        (s => s.Ulna.Thickness, (s, v) => s with { Ulna = s.Ulna with { Thickness = v } }),
        (s => s.Ulna.ShaftRadius, (s, v) => s with { Ulna = s.Ulna with { ShaftRadius = v } }),
        (s => s.Ulna.ValgusDegrees, (s, v) => s with { Ulna = s.Ulna with { ValgusDegrees = v } }),
        (s => s.Ulna.DorsalAngleDegrees, (s, v) => s with { Ulna = s.Ulna with { DorsalAngleDegrees = v } }),
        (s => s.Ulna.MiddleZ, (s, v) => s with { Ulna = s.Ulna with { MiddleZ = v } }),
        (s => s.Ulna.Flattening, (s, v) => s with { Ulna = s.Ulna with { Flattening = v } }));

    /// <summary>The parameters of the proximal radius.</summary>
    public static IReadOnlyList<ShapeParameter> Radius() => Of(
        (s => s.Radius.HeadDiameter, (s, v) => s with { Radius = s.Radius with { HeadDiameter = v } }),
        (s => s.Radius.HeadRoundness, (s, v) => s with { Radius = s.Radius with { HeadRoundness = v } }),
        (s => s.Radius.HeadHeight, (s, v) => s with { Radius = s.Radius with { HeadHeight = v } }),
        (s => s.Radius.HeadTaper, (s, v) => s with { Radius = s.Radius with { HeadTaper = v } }),
        (s => s.Radius.HeadRounding, (s, v) => s with { Radius = s.Radius with { HeadRounding = v } }),
        (s => s.Radius.DishDepth, (s, v) => s with { Radius = s.Radius with { DishDepth = v } }),
        (s => s.Radius.NeckDiameter, (s, v) => s with { Radius = s.Radius with { NeckDiameter = v } }),
        (s => s.Radius.TuberosityDistance, (s, v) => s with { Radius = s.Radius with { TuberosityDistance = v } }),
        (s => s.Radius.TuberosityHeight, (s, v) => s with { Radius = s.Radius with { TuberosityHeight = v } }),
        (s => s.Radius.ShaftDiameter, (s, v) => s with { Radius = s.Radius with { ShaftDiameter = v } }),
        (s => s.Radius.NeckShaftDegrees, (s, v) => s with { Radius = s.Radius with { NeckShaftDegrees = v } }));

    /// <summary>An adult with the mean of every parameter.</summary>
    public static ElbowShape MeanAdult(IEnumerable<ShapeParameter> parameters) =>
        parameters.Aggregate(Adult(0), (shape, p) => p.Set(shape, p.Mean));

    private static ShapeParameter[] Of(params ReadOnlySpan<(Func<ElbowShape, double> Get, Func<ElbowShape, double, ElbowShape> Set)> doors)
    {
        var adults = Enumerable.Range(0, Adults).Select(Adult).ToList();
        var parameters = new ShapeParameter[doors.Length];
        for (var i = 0; i < doors.Length; i++)
        {
            var values = adults.Select(doors[i].Get).ToList();
            var mean = values.Average();
            parameters[i] = new ShapeParameter(
                doors[i].Get, doors[i].Set, mean, Math.Sqrt(values.Average(v => (v - mean) * (v - mean))));
        }

        return parameters;
    }

    private static ElbowShape Adult(int seed) =>
        AdultShapeSampler.Sample(new CounterRandom((ulong)seed, 2), seed % 2 == 0 ? Sex.Male : Sex.Female, 35);
}
