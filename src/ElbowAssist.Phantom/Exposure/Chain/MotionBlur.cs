namespace ElbowAssist.Phantom.Exposure.Chain;

/// <summary>Blur of a straight motion at constant speed: the mean along a line centred on each pixel.</summary>
internal static class MotionBlur
{
    /// <summary>Blurs a plane in place.</summary>
    /// <param name="plane">Plane to blur.</param>
    /// <param name="scratch">Scratch plane.</param>
    /// <param name="lengthPixels">Length of the motion in pixels; below half a pixel nothing happens.</param>
    /// <param name="directionDegrees">Direction, degrees from x towards y.</param>
    public static void Apply(ImagePlane plane, ImagePlane scratch, double lengthPixels, double directionDegrees)
    {
        if (lengthPixels < 0.5)
        {
            return;
        }

        scratch.CopyFrom(plane);
        var samples = (int)Math.Ceiling(lengthPixels) + 1;
        var (sine, cosine) = Math.SinCos(directionDegrees * Math.PI / 180);
        plane.Pixels.AsSpan(0, plane.Count).Clear();
        for (var s = 0; s < samples; s++)
        {
            var along = ((s / (samples - 1.0)) - 0.5) * lengthPixels;
            AddShifted(scratch, plane, along * cosine, along * sine, 1f / samples);
        }
    }

    private static void AddShifted(ImagePlane source, ImagePlane sum, double dx, double dy, float weight)
    {
        var x0 = (int)Math.Floor(dx);
        var y0 = (int)Math.Floor(dy);
        var tx = (float)(dx - x0);
        var ty = (float)(dy - y0);
        for (var y = 0; y < sum.Height; y++)
        {
            var upper = source.Row(Math.Clamp(y + y0, 0, source.Height - 1));
            var lower = source.Row(Math.Clamp(y + y0 + 1, 0, source.Height - 1));
            var line = sum.Row(y);
            for (var x = 0; x < line.Length; x++)
            {
                var left = Math.Clamp(x + x0, 0, source.Width - 1);
                var right = Math.Clamp(x + x0 + 1, 0, source.Width - 1);
                var top = upper[left] + ((upper[right] - upper[left]) * tx);
                var bottom = lower[left] + ((lower[right] - lower[left]) * tx);
                line[x] += weight * (top + ((bottom - top) * ty));
            }
        }
    }
}
