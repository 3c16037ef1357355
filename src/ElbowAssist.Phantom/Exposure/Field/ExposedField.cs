using ElbowAssist.Geometry;
using ElbowAssist.Phantom.Exposure.Settings;

namespace ElbowAssist.Phantom.Exposure.Field;

/// <summary>The part of an image that the beam reaches and that belongs to the film of interest.</summary>
public sealed class ExposedField
{
    private readonly FieldSettings field;
    private readonly SecondFilm? second;
    private readonly double width;
    private readonly double height;
    private readonly double pixelMm;
    private readonly double longer;
    private readonly double cosine;
    private readonly double sine;

    /// <param name="settings">Collimation and a second film, if any.</param>
    /// <param name="width">Columns.</param>
    /// <param name="height">Rows.</param>
    /// <param name="pixelMm">Size of a pixel in millimetres.</param>
    public ExposedField(ExposureSettings settings, int width, int height, double pixelMm)
    {
        ArgumentNullException.ThrowIfNull(settings);
        field = settings.Field;
        second = settings.Second;
        this.width = width;
        this.height = height;
        this.pixelMm = pixelMm;
        longer = Math.Max(width, height);
        (sine, cosine) = Math.SinCos(field.TurnDegrees * Math.PI / 180);
    }

    /// <summary>True if a point of the first film is exposed.</summary>
    /// <param name="point">Point in pixels.</param>
    public bool Contains(Point point) =>
        point.X >= 0 && point.Y >= 0 && point.X <= width && point.Y <= height &&
        Intensity(point.X, point.Y) > 0.5 && Plate(point.X, point.Y) == PlateArea.First;

    /// <summary>Share of the beam that reaches a place, 0 to 1.</summary>
    internal double Intensity(double x, double y)
    {
        var beam = field.Shape == FieldShape.Full ? 1 : Through(OutsidePixels(x, y));
        return Plate(x, y) == PlateArea.Gap ? field.Leakage : beam;
    }

    /// <summary>Which film of the plate a place belongs to.</summary>
    internal PlateArea Plate(double x, double y)
    {
        if (second is null)
        {
            return PlateArea.First;
        }

        var (along, length) = second.Edge switch
        {
            FilmEdge.Left => (x, width),
            FilmEdge.Right => (width - x, width),
            FilmEdge.Top => (y, height),
            _ => (height - y, height),
        };
        var border = second.Share * length;
        var gap = second.GapMm / pixelMm;
        return along < border - gap ? PlateArea.Second : along < border ? PlateArea.Gap : PlateArea.First;
    }

    /// <summary>Pixel of the second film shown at a pixel of the plate: its middle strip, moved to the edge.</summary>
    internal (int X, int Y) SecondPlace(int x, int y)
    {
        var shiftX = second is null ? 0 : width * (1 - second.Share) / 2;
        var shiftY = second is null ? 0 : height * (1 - second.Share) / 2;
        return second?.Edge switch
        {
            FilmEdge.Left => ((int)Math.Min(width - 1, x + shiftX), y),
            FilmEdge.Right => ((int)Math.Max(0, x - shiftX), y),
            FilmEdge.Top => (x, (int)Math.Min(height - 1, y + shiftY)),
            _ => (x, (int)Math.Max(0, y - shiftY)),
        };
    }

    private double Through(double outsidePixels)
    {
        var penumbra = Math.Max(0.5, field.PenumbraMm / pixelMm);
        var share = Math.Clamp(0.5 - (outsidePixels / penumbra), 0, 1);
        return field.Leakage + ((1 - field.Leakage) * share);
    }

    /// <summary>Distance beyond the edge of the field in pixels, negative inside.</summary>
    private double OutsidePixels(double x, double y)
    {
        var dx = x - (width / 2) - (field.CentreX * longer);
        var dy = y - (height / 2) - (field.CentreY * longer);
        var u = Math.Abs((dx * cosine) + (dy * sine));
        var v = Math.Abs((dy * cosine) - (dx * sine));
        var halfWidth = field.HalfWidth * longer;
        var halfHeight = field.HalfHeight * longer;
        if (field.Shape == FieldShape.Rectangle)
        {
            return Math.Max(u - halfWidth, v - halfHeight);
        }

        var radius = Math.Sqrt((u * u / (halfWidth * halfWidth)) + (v * v / (halfHeight * halfHeight)));
        return (radius - 1) * Math.Min(halfWidth, halfHeight);
    }
}

/// <summary>Parts of a plate with two films.</summary>
internal enum PlateArea
{
    /// <summary>The film of interest.</summary>
    First,

    /// <summary>The unexposed strip between.</summary>
    Gap,

    /// <summary>The other film.</summary>
    Second,
}
