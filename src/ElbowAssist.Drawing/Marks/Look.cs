namespace ElbowAssist.Drawing.Marks;

/// <summary>What every renderer draws alike.</summary>
internal static class Look
{
    public const double BandOpacity = 0.16;

    public const double HaloOpacity = 0.6;

    /// <summary>What a halo adds to the width of a line, in thousandths of the film.</summary>
    public const double HaloWidth = 2.4;
}
