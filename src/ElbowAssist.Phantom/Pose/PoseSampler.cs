using ElbowAssist.Anatomy;
using ElbowAssist.Phantom.Sampling;

namespace ElbowAssist.Phantom.Pose;

/// <summary>
/// Draws how a film was taken. No published distribution of malrotation in degrees was found: the spreads are
/// estimates that give about a quarter optimal, two thirds usable and an eighth poor laterals.
/// </summary>
internal static class PoseSampler
{
    public static ElbowPose Sample(CounterRandom random, View view, Adequacy adequacy)
    {
        var wide = adequacy switch
        {
            Adequacy.Good => 0.3,
            Adequacy.Poor => 2.2,
            _ => 1.0,
        };
        return view switch
        {
            View.Lateral => Lateral(random, wide),
            View.Ap => Ap(random, wide),
            _ => Oblique(random, wide),
        };
    }

    private static ElbowPose Lateral(CounterRandom r, double wide)
    {
        var rotation = r.Chance(0.8) ? r.Normal(2, 7) : r.Normal(0, 18);
        var flexion = r.Chance(wide < 0.5 ? 0 : 0.25) ? r.Uniform(40, 80) : r.Normal(90, 10 * Math.Min(wide, 1.5));
        return Beam(r, flexion, r.Chance(0.8) ? r.Normal(80, 22, 0, 160) : r.Uniform(0, 160), rotation * wide, r.Normal(0, 6) * wide);
    }

    private static ElbowPose Ap(CounterRandom r, double wide)
    {
        var u = r.Uniform();
        var flexion = u < 0.6 || wide < 0.5 ? r.Uniform(0, 10) : u < 0.9 ? r.Uniform(10, 45) : r.Uniform(45, 80);
        var rotation = r.Chance(0.05) ? r.Uniform(80, 160) : Math.Abs(r.Normal(0, 15));
        return Beam(r, flexion, rotation, r.Normal(0, 8) * wide, r.Normal(0, 7) * wide);
    }

    private static ElbowPose Oblique(CounterRandom r, double wide)
    {
        var turn = r.Uniform(25, 65) * (r.Chance(0.5) ? 1 : -1);
        return Beam(r, r.Chance(0.8) ? r.Uniform(0, 30) : r.Uniform(30, 100), r.Uniform(0, 160), turn, r.Normal(0, 7) * wide);
    }

    private static ElbowPose Beam(CounterRandom r, double flexion, double forearm, double axial, double tilt) => new()
    {
        FlexionDegrees = flexion,
        ForearmRotationDegrees = forearm,
        AxialRotationDegrees = axial,
        TiltDegrees = tilt,
        FromBehind = r.Chance(0.1),
        SourceDetectorMillimetres = r.Uniform(1000, 1150),
        ObjectDetectorMillimetres = r.Uniform(20, 60),
        CentralRayX = r.Normal(0, 10),
        CentralRayY = r.Normal(0, 10),
    };
}
