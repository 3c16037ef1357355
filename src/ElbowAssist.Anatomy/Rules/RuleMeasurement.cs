namespace ElbowAssist.Anatomy.Rules;

/// <summary>A measurement as the rules need it. A withheld measurement is one without a value: no rule speaks of it.</summary>
/// <param name="Name">Measurement name.</param>
/// <param name="Value">Value in the measurement's unit (degrees, millimetres or ratio), or null if withheld.</param>
/// <param name="Low">Lower end of the redraw interval, or null if withheld.</param>
/// <param name="High">Upper end of the redraw interval, or null if withheld.</param>
/// <param name="EitherSide">True if the redraw interval or a second construction lies on both sides of a limit.</param>
public sealed record RuleMeasurement(string Name, double? Value, double? Low, double? High, bool EitherSide)
{
    /// <summary>A withheld measurement.</summary>
    public static RuleMeasurement Withheld(string name) => new(name, null, null, null, false);

    internal bool IsHeldBack => Value is null || !double.IsFinite(Value.Value);

    internal double LowOrValue => Low ?? Value ?? double.NaN;

    internal double HighOrValue => High ?? Value ?? double.NaN;
}
