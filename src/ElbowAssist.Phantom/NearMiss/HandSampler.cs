using ElbowAssist.Phantom.Exposure.Settings;
using ElbowAssist.Phantom.NearMiss.Regions;
using ElbowAssist.Phantom.NearMiss.Rendering;
using ElbowAssist.Phantom.Rendering.Field;
using ElbowAssist.Phantom.Sampling;

namespace ElbowAssist.Phantom.NearMiss;

/// <summary>A helper's hand placed on a film.</summary>
internal static class HandSampler
{
    private const float AdultHandMm = 185;

    /// <summary>The hand as a scene that lines up with a film.</summary>
    public static NearMissModel Model(HelperHand hand, ulong seed, double pixelMm, int width, int height)
    {
        var builder = new SceneBuilder(new CounterRandom(seed, 0x4841), 1f);
        Arm.Hand(builder);
        var scale = (float)hand.LengthMm / AdultHandMm;
        var (solids, parts, softFirst) = builder.Finish(scale);
        var longer = Math.Max(width, height) * pixelMm;
        var (sine, cosine) = Math.SinCos((hand.DirectionDegrees + 90) * Math.PI / 180);

        // The film's axes seen from the hand, whose fingers point along +Y and whose knuckles lie at a height of 90.
        var right = new Vec3((float)cosine, (float)sine, 0);
        var down = new Vec3((float)sine, (float)-cosine, 0);
        var corner = new Vec3(0, 90 * scale, 0)
            - (right * (float)((width * pixelMm / 2) + (hand.X * longer)))
            - (down * (float)((height * pixelMm / 2) + (hand.Y * longer)));
        var scene = new NearMissScene
        {
            Camera = new CameraGeometry
            {
                Source = corner + (right * (float)(width * pixelMm / 2)) + (down * (float)(height * pixelMm / 2)) + new Vec3(0, 0, 1050),
                Corner = corner,
                StepX = right * (float)pixelMm,
                StepY = down * (float)pixelMm,
                HalfDepth = 60,
            },
            SoftFirst = softFirst,
            SoftCount = parts.Length - softFirst,
            SoftJoin = 10,
            SolidCount = solids.Length,
            Skin = 1.4f,
            FatLayer = 2,
            Marbling = 0.2f,
            Grain = new Vec3(0.07f, 0.02f, 0.07f),
            NoiseSeed = (uint)seed,
        };
        return new NearMissModel(scene, solids, parts);
    }
}
