using ElbowAssist.Anatomy.Measurements.AnteriorHumeralLine;
using ElbowAssist.Anatomy.Measurements.BaumannAngle;
using ElbowAssist.Anatomy.Measurements.CarryingAngle;
using ElbowAssist.Anatomy.Measurements.FatPadAngle;
using ElbowAssist.Anatomy.Measurements.FlexionAngle;
using ElbowAssist.Anatomy.Measurements.LateralCapitellohumeralAngle;
using ElbowAssist.Anatomy.Measurements.RadialNeckShaftAngle;
using ElbowAssist.Anatomy.Measurements.RadiocapitellarLine;
using ElbowAssist.Anatomy.Measurements.RadiocapitellarRatio;
using ElbowAssist.Anatomy.Measurements.ShaftCondylarAngle;
using ElbowAssist.Anatomy.Measurements.TrueLateral;
using ElbowAssist.Anatomy.Measurements.UlnarBow;
using ElbowAssist.Anatomy.Measurements.UlnohumeralGap;

namespace ElbowAssist.Anatomy.Measurements;

/// <summary>The measurements of each view, in the order of results.</summary>
public static class ViewMeasurements
{
    /// <summary>Measurements of the lateral view.</summary>
    public static IReadOnlyList<MeasurementDefinition> Lateral { get; } =
    [
        new DistalCortexPosition(),
        new ShaftCortexPosition(),
        new LateralNeckOffset(),
        new LateralShaftOffset(),
        new RadiocapitellarRatioMeasurement(),
        new ShaftCondylarAngleMeasurement(),
        new LateralCapitellohumeralAngleMeasurement(),
        new FlexionAngleMeasurement(),
        new LateralNeckShaftAngle(),
        new UlnohumeralGapMeasurement(),
        new AnteriorFatPadAngle(),
        new ArcOffset(),
        new UlnarBowMeasurement(),
    ];

    /// <summary>Measurements of the AP view.</summary>
    public static IReadOnlyList<MeasurementDefinition> Ap { get; } =
    [
        new ApNeckOffset(),
        new ApShaftOffset(),
        new BaumannAngleMeasurement(),
        new CarryingAngleMeasurement(),
        new ApNeckShaftAngle(),
    ];

    /// <summary>Measurements of a view; none for a view without landmarks.</summary>
    public static IReadOnlyList<MeasurementDefinition> Of(View view) => view switch
    {
        View.Lateral => Lateral,
        View.Ap => Ap,
        _ => [],
    };
}
