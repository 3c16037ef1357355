using ElbowAssist.Anatomy.Rules;

namespace ElbowAssist.Anatomy.Measurements.RadialNeckShaftAngle;

/// <summary>What the radial neck–shaft angle of both views shares.</summary>
internal static class NeckShaftAngle
{
    public const string MeasurementName = "radial-neck-shaft-angle";

    public const string Construction =
        "Axis of the radial neck against the axis of the shaft, each through two midpoints, as departure from the straight line: ";

    public const string Caution =
        "12.2 degrees (obtuse form 167.8, 160.5 to 178) on 40 dry adult bones, largest in one position of forearm rotation only.";

    public static string Source => Publications.NeckMorphometry.Citation;
}
