using ElbowAssist.Reading;

namespace ElbowAssist.Drawing.Wording;

/// <summary>State words as results spell them.</summary>
internal static class StateWords
{
    public static string Of(MeasurementState state) => state switch
    {
        MeasurementState.Measured => "measured",
        MeasurementState.EitherSide => "either-side",
        _ => "withheld",
    };
}
