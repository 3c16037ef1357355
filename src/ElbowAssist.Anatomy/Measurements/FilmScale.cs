using ElbowAssist.Geometry;

namespace ElbowAssist.Anatomy.Measurements;

/// <summary>
/// Size of a pixel. Lengths and angles are computed after scaling x by the column spacing and y by the row spacing.
/// </summary>
/// <param name="ColumnSpacing">Distance between columns (along x), in millimetres if known, else 1.</param>
/// <param name="RowSpacing">Distance between rows (along y), in millimetres if known, else 1.</param>
/// <param name="InMillimetres">Whether the spacings are millimetres; otherwise only ratios and angles have a meaning.</param>
public readonly record struct FilmScale(double ColumnSpacing, double RowSpacing, bool InMillimetres)
{
    /// <summary>Spacing unknown: square pixels are taken, and no length is measured.</summary>
    public static FilmScale Unknown => new(1, 1, false);

    /// <summary>The scale of a film; unknown unless both spacings are positive numbers.</summary>
    public static FilmScale Of(double? rowSpacingMm, double? columnSpacingMm) =>
        rowSpacingMm is > 0 and < double.PositiveInfinity && columnSpacingMm is > 0 and < double.PositiveInfinity
            ? new FilmScale(columnSpacingMm.Value, rowSpacingMm.Value, true)
            : Unknown;

    /// <summary>From pixels of the original image to scaled coordinates.</summary>
    public Point Scale(Point pixels) => new(pixels.X * ColumnSpacing, pixels.Y * RowSpacing);

    /// <summary>From scaled coordinates to pixels of the original image.</summary>
    public Point ToPixels(Point scaled) => new(scaled.X / ColumnSpacing, scaled.Y / RowSpacing);

    /// <summary>From scaled coordinates to pixels of the original image; the direction has length 1 afterwards.</summary>
    public Line ToPixels(in Line scaled) =>
        new(ToPixels(scaled.Point), new Vector(scaled.Direction.X / ColumnSpacing, scaled.Direction.Y / RowSpacing).Unit);
}
