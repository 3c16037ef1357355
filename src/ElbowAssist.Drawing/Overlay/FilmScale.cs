using ElbowAssist.Geometry;
using ElbowAssist.Reading;

namespace ElbowAssist.Drawing.Overlay;

/// <summary>Sizes of what is drawn, so that every film looks alike at the same size on screen.</summary>
/// <param name="Width">Columns of the film.</param>
/// <param name="Height">Rows of the film.</param>
internal sealed record FilmScale(int Width, int Height)
{
    /// <summary>A thousandth of the longer side.</summary>
    public double Unit => Math.Max(Width, Height) / 1000.0;

    public double LabelSize => 15 * Unit;

    /// <summary>Letters that stand for words, still read where the film is 88 mm high: 3 mm there.</summary>
    public double LetterSize => 34 * Unit;

    public double CautionSize => Math.Min(13 * Unit, Width / 50.0);

    public static FilmScale Of(FilmReading reading) => new(reading.Image.Width, reading.Image.Height);

    public bool Holds(Point p) => p.X >= 0 && p.Y >= 0 && p.X <= Width && p.Y <= Height;
}
