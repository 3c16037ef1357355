using ElbowAssist.Phantom.Shape;

namespace ElbowAssist.Phantom.Injury;

/// <summary>
/// Fluid in the joint lifts the fat pads. Displacement against volume is an estimate, bounded by the volume films begin
/// to show (5 to 10 ml), the capacity of the capsule (23 ± 4 ml, Arthroscopy 1990;6:100) and displacements seen on MRI.
/// </summary>
internal static class Effusion
{
    public static ElbowShape Applied(ElbowShape shape, ElbowInjury? injury)
    {
        if (injury is null || injury.Effusion <= 0)
        {
            return shape;
        }

        var scale = shape.Humerus.EpicondylarWidth / 60;
        var anterior = Math.Min(1.0 * Math.Pow(Math.Max(0, injury.Effusion - 2), 0.85), 15) * scale;
        var posterior = Math.Min(0.35 * Math.Pow(Math.Max(0, injury.Effusion - 5), 0.9), 6) * scale;
        var soft = shape.Soft with
        {
            AnteriorPadLift = shape.Soft.AnteriorPadLift + anterior,
            PosteriorPadLift = posterior > 0.3 ? posterior : -1,
            AnteriorPadLength = shape.Soft.AnteriorPadLength * (anterior > 2 ? 1.1 : 1),
        };
        return shape with { Soft = soft };
    }
}
