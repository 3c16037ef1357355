using ElbowAssist.Drawing.Marks;
using ElbowAssist.Drawing.Overlay;
using ElbowAssist.Drawing.Png;
using ElbowAssist.Reading;
using SkiaSharp;

namespace ElbowAssist.Drawing;

/// <summary>A reading as a PNG picture: the film with what was laid, and the words beside it.</summary>
public static class OverlayPng
{
    // Between these sizes of the film's longer side its lines are easy to see and its words easy to read.
    private const int LongestSide = 1600;
    private const int ShortestLongSide = 1000;

    /// <summary>The picture, PNG encoded.</summary>
    public static byte[] Write(FilmReading reading, OverlayOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(reading);
        options ??= OverlayOptions.Default;
        var scene = OverlayScene.Of(reading, options);
        var longer = Math.Max(scene.Scale.Width, scene.Scale.Height);
        var zoom = Math.Clamp(longer, ShortestLongSide, LongestSide) / (double)longer;
        var width = scene.Scale.Width + (scene.Legend?.Width ?? 0);
        var height = Math.Max(scene.Scale.Height, scene.Legend?.Height ?? 0);
        var info = new SKImageInfo(
            Math.Max(1, (int)Math.Ceiling(width * zoom)), Math.Max(1, (int)Math.Ceiling(height * zoom)), SKColorType.Rgba8888, SKAlphaType.Premul);
        using var surface = SKSurface.Create(info);
        var canvas = surface.Canvas;
        canvas.Clear(new SKColor(0x15, 0x18, 0x1B));
        canvas.Scale((float)zoom);
        var frame = new SKRect(0, 0, scene.Scale.Width, scene.Scale.Height);
        DrawFilm(canvas, options.Film, frame);
        using var painter = new MarkPainter(canvas, scene.Scale.Unit);
        canvas.Save();
        canvas.ClipRect(frame);
        foreach (var mark in scene.OnFilm.SelectMany(g => g.Marks))
        {
            painter.Paint(mark, halo: true);
        }

        canvas.Restore();
        canvas.Translate(scene.Scale.Width, 0);
        foreach (var mark in scene.Legend?.Marks ?? [])
        {
            painter.Paint(mark, halo: false);
        }

        using var image = surface.Snapshot();
        using var data = image.Encode(SKEncodedImageFormat.Png, 100);
        return data.ToArray();
    }

    /// <summary>A small picture with a letter on it, to find out whether the drawing library and its font load.</summary>
    /// <exception cref="InvalidOperationException">The letter left no trace.</exception>
    public static byte[] WriteSpecimen()
    {
        using var surface = SKSurface.Create(new SKImageInfo(32, 32, SKColorType.Rgba8888, SKAlphaType.Premul));
        surface.Canvas.Clear(SKColors.Black);
        using (var painter = new MarkPainter(surface.Canvas, 1))
        {
            painter.Paint(new Words(new Geometry.Point(4, 26), "W", 24, Ink.Words), halo: false);
        }

        using var image = surface.Snapshot();
        using var pixels = SKBitmap.FromImage(image);
        if (pixels.Pixels.All(p => p.Red == 0))
        {
            throw new InvalidOperationException("The font draws nothing.");
        }

        using var data = image.Encode(SKEncodedImageFormat.Png, 100);
        return data.ToArray();
    }

    private static void DrawFilm(SKCanvas canvas, GreyPicture? film, SKRect frame)
    {
        if (film is null)
        {
            using var black = new SKPaint { Color = SKColors.Black };
            canvas.DrawRect(frame, black);
            return;
        }

        using var image = FilmEncoder.Image(film);
        canvas.DrawImage(image, frame, FilmEncoder.Sampling);
    }
}
