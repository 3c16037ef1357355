using ElbowAssist.Phantom.Exposure.Settings;
using ElbowAssist.Phantom.Sampling;

namespace ElbowAssist.Phantom.Exposure.Sampling;

/// <summary>Draws collimation, a helper's hand and a second film.</summary>
internal static class FieldSampler
{
    public static FieldSettings Field(CounterRandom r, HashSet<string> faults, FilmContent content)
    {
        var longer = (double)Math.Max(content.Paths.Width, content.Paths.Height);
        var isCropped = faults.Contains(FilmFaults.Cropped);
        var shape = r.Chance(0.5) ? FieldShape.Full : r.Chance(0.9) ? FieldShape.Rectangle : FieldShape.Ellipse;
        var turn = r.Chance(0.75) ? r.Normal(0, 3) : r.Uniform(-45, 45);
        var grey = r.Chance(0.85) ? r.Uniform(0, 0.06) : r.Chance(0.75) ? r.Uniform(0.92, 1) : r.Uniform(0.1, 0.9);
        double? shutter = r.Chance(0.65) ? grey : null;
        var leakage = r.Uniform(0.0015, 0.012);
        if (shape == FieldShape.Full && !isCropped)
        {
            return new FieldSettings { ShutterGrey = null, Leakage = leakage };
        }

        var (sine, cosine) = Math.SinCos(turn * Math.PI / 180);
        var margin = content.UnitPixels * (isCropped ? r.Uniform(1.4, 3) : r.Uniform(1.1, 3));
        double halfWidth = 0, halfHeight = 0;
        foreach (var point in content.Points.Take(isCropped ? 1 : int.MaxValue))
        {
            var dx = point.X - content.Focus.X;
            var dy = point.Y - content.Focus.Y;
            halfWidth = Math.Max(halfWidth, Math.Abs((dx * cosine) + (dy * sine)));
            halfHeight = Math.Max(halfHeight, Math.Abs((dy * cosine) - (dx * sine)));
        }

        var round = shape == FieldShape.Ellipse ? 1.3 : 1;
        var slipX = isCropped ? r.Normal(0, content.UnitPixels * 1.2) : 0;
        var slipY = isCropped ? r.Normal(0, content.UnitPixels * 1.2) : 0;
        return new FieldSettings
        {
            Shape = shape == FieldShape.Full ? FieldShape.Rectangle : shape,
            CentreX = (content.Focus.X + slipX - (content.Paths.Width / 2.0)) / longer,
            CentreY = (content.Focus.Y + slipY - (content.Paths.Height / 2.0)) / longer,
            HalfWidth = Math.Max(content.UnitPixels * 1.6, (halfWidth * round) + margin) / longer,
            HalfHeight = Math.Max(content.UnitPixels * 1.6, (halfHeight * round) + margin) / longer,
            TurnDegrees = turn,
            PenumbraMm = r.Uniform(0.3, 2.5),
            Leakage = leakage,
            ShutterGrey = shutter,
        };
    }

    public static HelperHand? Hand(CounterRandom r, HashSet<string> faults, FilmContent content)
    {
        const double knuckleToTipMm = 95;
        var angle = r.Uniform(0, 2 * Math.PI);
        var fieldMm = Math.Max(content.Paths.Width, content.Paths.Height) * content.PixelMm;
        var reach = r.Uniform(0.22, 0.42) + (knuckleToTipMm / fieldMm);
        var hand = new HelperHand(
            Math.Cos(angle) * reach, Math.Sin(angle) * reach, (angle * 180 / Math.PI) + 180 + r.Normal(0, 20), r.Uniform(155, 195));
        return faults.Contains(FilmFaults.HelperHand) ? hand : null;
    }

    public static SecondFilm? Second(CounterRandom r, HashSet<string> faults)
    {
        var second = new SecondFilm((FilmEdge)(int)(r.Uniform() * 4), r.Uniform(0.22, 0.42), r.Uniform(2, 8));
        return faults.Contains(FilmFaults.SecondFilm) ? second : null;
    }
}
