using ElbowAssist.Geometry;

namespace ElbowAssist.Testing;

/// <summary>A rough grey picture that goes with <see cref="SampleLandmarks.Lateral"/>: cylinders and a ball of bone in soft tissue.</summary>
public static class SampleFilm
{
    private static readonly (Point From, Point To, double Radius)[] Limbs =
    [
        (new(420, -50), new(420, 560), 150),
        (new(410, 620), new(-50, 690), 150),
    ];

    private static readonly (Point From, Point To, double Radius)[] Bones =
    [
        (new(420, -50), new(420, 480), 45),
        (new(420, 480), new(400, 600), 48),
        (new(382, 640), new(383, 640), 62),
        (new(398, 636), new(399, 636), 68),
        (new(275, 643), new(-50, 646), 25),
        (new(296, 643), new(300, 643), 36),
        (new(470, 640), new(470, 735), 40),
        (new(470, 735), new(-50, 755), 28),
    ];

    /// <summary>Grey value from 0 (air) to 1 (dense bone) at a pixel of the sample film.</summary>
    public static double Grey(int x, int y)
    {
        var p = new Point(x + 0.5, y + 0.5);
        var soft = Limbs.Max(l => Depth(p, l)) / 150;
        var bone = Bones.Sum(b => Math.Sqrt(Depth(p, b))) / 14;
        var noise = ((((x * 73856093) ^ (y * 19349663)) & 255) / 255.0) - 0.5;
        return Math.Clamp((0.32 * soft) + (0.45 * bone) + (0.03 * noise), 0, 1);
    }

    /// <summary>The film as a 16-bit PNG file.</summary>
    public static byte[] Png() =>
        PlainPng.Grey16(SampleLandmarks.Width, SampleLandmarks.Height, (x, y) => (ushort)(600 + (60000 * Grey(x, y))));

    /// <summary>The film as 8-bit grey values by rows.</summary>
    public static byte[] Pixels()
    {
        var pixels = new byte[SampleLandmarks.Width * SampleLandmarks.Height];
        for (var y = 0; y < SampleLandmarks.Height; y++)
        {
            for (var x = 0; x < SampleLandmarks.Width; x++)
            {
                pixels[(y * SampleLandmarks.Width) + x] = (byte)(255 * Grey(x, y));
            }
        }

        return pixels;
    }

    // Half the path through a cylinder square to its axis, as a share of the radius squared, in pixels.
    private static double Depth(Point p, (Point From, Point To, double Radius) part)
    {
        var along = part.To - part.From;
        var share = Math.Clamp((p - part.From).Dot(along) / along.Dot(along), 0, 1);
        var distance = p.DistanceTo(part.From + (along * share));
        return Math.Sqrt(Math.Max(0, (part.Radius * part.Radius) - (distance * distance)));
    }
}
