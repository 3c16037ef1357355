using System.Reflection;
using ElbowAssist.Drawing.Marks;
using ElbowAssist.Geometry;
using SkiaSharp;

namespace ElbowAssist.Drawing.Png;

/// <summary>Marks on a Skia canvas.</summary>
internal sealed class MarkPainter(SKCanvas canvas, double unit) : IDisposable
{
    // Without a font of our own nothing would be written: a server has no font configuration.
    private readonly SKTypeface typeface = LoadTypeface();

    public void Paint(Mark mark, bool halo)
    {
        switch (mark)
        {
            case Band band:
                PaintBand(band);
                break;
            case Stroke stroke:
                using (var path = PathOf(stroke.Points))
                {
                    PaintOutline(path, stroke.Ink, stroke.Width, stroke.Dashes, halo ? Look.HaloWidth * unit : 0, Look.HaloOpacity);
                }

                break;
            case Ring ring:
                PaintRing(ring);
                break;
            case Words words:
                PaintWords(words, halo);
                break;
        }
    }

    public void Dispose() => typeface.Dispose();

    private static SKPath PathOf(IReadOnlyList<Point> points)
    {
        using var builder = new SKPathBuilder();
        builder.MoveTo((float)points[0].X, (float)points[0].Y);
        foreach (var p in points.Skip(1))
        {
            builder.LineTo((float)p.X, (float)p.Y);
        }

        return builder.Detach();
    }

    private void PaintBand(Band band)
    {
        using var path = PathOf([.. band.Points, band.Points[0]]);
        using var paint = new SKPaint { IsAntialias = true, Color = Colour(band.Ink, Look.BandOpacity) };
        canvas.DrawPath(path, paint);
    }

    private void PaintRing(Ring ring)
    {
        canvas.Save();
        canvas.RotateDegrees((float)ring.Degrees, (float)ring.Centre.X, (float)ring.Centre.Y);
        using var builder = new SKPathBuilder();
        builder.AddOval(new SKRect(
            (float)(ring.Centre.X - ring.RadiusX),
            (float)(ring.Centre.Y - ring.RadiusY),
            (float)(ring.Centre.X + ring.RadiusX),
            (float)(ring.Centre.Y + ring.RadiusY)));
        using var path = builder.Detach();
        PaintOutline(path, ring.Ink, ring.Width, ring.Dashes, Look.HaloWidth * unit / 2, Look.HaloOpacity / 2);
        canvas.Restore();
    }

    private void PaintOutline(SKPath path, Ink ink, double width, IReadOnlyList<double> dashes, double halo, double haloOpacity)
    {
        using var effect = dashes.Count == 0 ? null : SKPathEffect.CreateDash([.. dashes.Select(d => (float)d)], 0);
        using var paint = new SKPaint { IsAntialias = true, IsStroke = true };
        paint.PathEffect = effect;
        if (halo > 0)
        {
            paint.StrokeWidth = (float)(width + halo);
            paint.Color = SKColors.Black.WithAlpha((byte)(255 * haloOpacity));
            canvas.DrawPath(path, paint);
        }

        paint.StrokeWidth = (float)width;
        paint.Color = Colour(ink, 1);
        canvas.DrawPath(path, paint);
    }

    private void PaintWords(Words words, bool halo)
    {
        using var font = new SKFont(typeface, (float)words.Size);
        using var paint = new SKPaint { IsAntialias = true };
        if (halo)
        {
            paint.IsStroke = true;
            paint.StrokeJoin = SKStrokeJoin.Round;
            paint.StrokeWidth = (float)(Look.HaloWidth * unit);
            paint.Color = SKColors.Black.WithAlpha((byte)(255 * Look.HaloOpacity));
            canvas.DrawText(words.Text, (float)words.At.X, (float)words.At.Y, SKTextAlign.Left, font, paint);
        }

        paint.IsStroke = false;
        paint.Color = Colour(words.Ink, 1);
        canvas.DrawText(words.Text, (float)words.At.X, (float)words.At.Y, SKTextAlign.Left, font, paint);
    }

    private static SKColor Colour(Ink ink, double opacity)
    {
        var (r, g, b) = ink.Colour();
        return new SKColor(r, g, b, (byte)Math.Round(255 * opacity));
    }

    private static SKTypeface LoadTypeface()
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream("ElbowAssist.Drawing.Fonts.DejaVuSans.ttf");
        return SKTypeface.FromStream(stream) ?? throw new InvalidOperationException("The assembly lacks its font.");
    }
}
