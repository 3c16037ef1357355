using System.Globalization;

namespace ElbowAssist.Anatomy.Measurements.Construction;

/// <summary>The same angle as papers that count from the straight line print it: 180° less the acute form.</summary>
internal static class ObtuseForm
{
    /// <summary>180° less the size of an angle.</summary>
    public static double Of(double degrees) => 180 - Math.Abs(degrees);

    /// <summary>A sentence to print beside the acute form.</summary>
    public static string Beside(double degrees) =>
        string.Create(CultureInfo.InvariantCulture, $"In the obtuse form {Of(degrees):0.0} degrees.");
}
