namespace ElbowAssist.Drawing.Growth;

/// <summary>Years from birth to 18 along the strip.</summary>
internal readonly record struct AgeAxis(double Left, double Right)
{
    public const double Years = 18;

    public double At(double years) => Left + ((Right - Left) * Math.Clamp(years, 0, Years) / Years);
}
