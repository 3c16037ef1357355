using ElbowAssist.Phantom.Rendering.Field;
using ElbowAssist.Phantom.Sampling;

namespace ElbowAssist.Phantom.Injury;

/// <summary>
/// Places metal. Pins of 1.5 to 2.0 mm and wire of 1.0 mm at the olecranon, plates 2 to 3.5 mm thick and 8 to 11 mm
/// wide: common practice.
/// </summary>
internal static class FixationBuilder
{
    public static MetalGeometry Build(Fixation fixation, CounterRandom r, float k, HumerusGeometry h, UlnaGeometry u) => fixation switch
    {
        Fixation.HumeralPins => Pins(r, k, h),
        Fixation.OlecranonTensionBand => TensionBand(r, k, u),
        Fixation.HumeralPlate => Plate(r, k, h),
        _ => default,
    };

    private static MetalGeometry Pins(CounterRandom r, float k, HumerusGeometry h)
    {
        var radius = (float)r.Uniform(0.7, 1.0);
        var lateral = h.LateralEpicondyle.To + new Vec3(2 * k, -6 * k, 10 * k);
        var m = new MetalGeometry
        {
            Rod1 = Cone.Of(lateral, radius, Near(r, h, k, 62, -9), radius),
            Rod2 = Cone.Of(lateral + new Vec3(1.5f * k, 2 * k, -6 * k), radius, Near(r, h, k, 70, 2), radius),
        };
        if (r.Chance(0.5))
        {
            m.Rod3 = Cone.Of(h.MedialEpicondyle.To + new Vec3(0, -4 * k, -8 * k), radius, Near(r, h, k, 62, 9), radius);
        }

        return m;
    }

    private static Vec3 Near(CounterRandom r, HumerusGeometry h, float k, float height, float z)
    {
        var y = (height + (float)r.Normal(0, 5)) * k;
        return HumerusField.Axis(in h, y) + new Vec3((float)r.Normal(0, 2) * k, 0, z * k);
    }

    private static MetalGeometry TensionBand(CounterRandom r, float k, UlnaGeometry u)
    {
        var pin = (float)r.Uniform(0.75, 1.0);
        var start = new Vec3(u.Olecranon.From.X - (9 * k), u.Olecranon.From.Y - (2 * k), u.MiddleZ);
        var end = new Vec3((float)r.Uniform(50, 90) * k, u.Shaft1.To.Y + (float)r.Normal(3, 2), u.MiddleZ);
        var side = new Vec3(0, 0, 3.5f * k);
        var hole = new Vec3((float)r.Uniform(34, 46) * k, u.Shaft1.To.Y - (6 * k), u.MiddleZ);
        var bend = start + new Vec3(1, -4 * k, 0);
        return new MetalGeometry
        {
            Rod1 = Rod(u, start + side, end + side, pin),
            Rod2 = Rod(u, start - side, end - side, pin),
            Rod3 = Rod(u, bend + (side * 1.6f), hole - (side * 1.4f), 0.5f),
            Rod4 = Rod(u, bend - (side * 1.6f), hole + (side * 1.4f), 0.5f),
            Rod5 = Rod(u, hole - (side * 1.4f), hole + (side * 1.4f), 0.5f),
            Rod6 = Rod(u, bend - (side * 1.6f), bend + (side * 1.6f), 0.5f),
        };
    }

    private static Cone Rod(UlnaGeometry u, Vec3 from, Vec3 to, float radius) =>
        Cone.Of(Frame.ToOuter(in u.Forearm, from), radius, Frame.ToOuter(in u.Forearm, to), radius);

    private static MetalGeometry Plate(CounterRandom r, float k, HumerusGeometry h)
    {
        var low = HumerusField.Axis(in h, 18 * k);
        var high = HumerusField.Axis(in h, (float)r.Uniform(75, 105) * k);
        var from = new Vec3(low.X - (2 * k), low.Y, low.Z + HumerusField.HalfMl(in h, 22 * k));
        var to = new Vec3(high.X - HumerusField.HalfAp(in h, high.Y), high.Y, high.Z + (0.5f * HumerusField.HalfMl(in h, high.Y)));
        var along = (to - from).Unit;
        var outward = new Vec3(-0.7f, 0, 0.7f);
        outward = (outward - (along * outward.Dot(along))).Unit;
        var middle = ((from + to) * 0.5f) + (outward * 2);
        var half = new Vec3((to - from).Length / 2, (float)r.Uniform(4, 5.5), (float)r.Uniform(1.0, 1.7));
        var frame = Frame.From(middle, along, along.Cross(outward).Unit);
        Cone Screw(float share)
        {
            var at = middle + (along * (half.X * share)) + (outward * 1.5f);
            return Cone.Of(at, 1.6f, at - (outward * (float)r.Uniform(16, 32)), 1.6f);
        }

        return new MetalGeometry
        {
            Plate = frame,
            PlateHalf = half,
            Rod1 = Screw(-0.9f),
            Rod2 = Screw(-0.55f),
            Rod3 = Screw(-0.1f),
            Rod4 = Screw(0.3f),
            Rod5 = Screw(0.62f),
            Rod6 = Screw(0.93f),
        };
    }
}
