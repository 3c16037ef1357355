namespace ElbowAssist.Phantom.Exposure.Settings;

/// <summary>From detector signal to the grey values that a film shows.</summary>
public sealed record ProcessingSettings
{
    /// <summary>Percentile of the log signal in the exposed field shown as black, 0 to 40.</summary>
    public double WindowLowPercentile { get; init; } = 0.5;

    /// <summary>Percentile of the log signal in the exposed field shown as white, 90 to 100.</summary>
    public double WindowHighPercentile { get; init; } = 99.8;

    /// <summary>Room left above the white point as a share of the window; bone then stays below white.</summary>
    public double Headroom { get; init; } = 0.1;

    /// <summary>Gain of detail finer than a millimetre (edge enhancement), 0 to 2.5.</summary>
    public double DetailGain { get; init; } = 0.4;

    /// <summary>Gain of structure of a few millimetres, 0 to 1.5.</summary>
    public double StructureGain { get; init; } = 0.3;

    /// <summary>Share of the coarse differences taken out (dynamic range compression), 0 to 0.9.</summary>
    public double Equalisation { get; init; } = 0.1;

    /// <summary>Local contrast normalisation: 0 none, 1 wholly replaced.</summary>
    public double LocalNormalisation { get; init; }

    /// <summary>Grey of plain soft tissue, 0 to 1; the tone curve is bent to put it there.</summary>
    public double SoftTissueGrey { get; init; } = 0.2;

    /// <summary>Slope of a sigmoid tone curve added on top, 0 for none; 1 to 5.</summary>
    public double SigmoidSlope { get; init; }

    /// <summary>Share of the grey range cut off at the dark end by late windowing, −0.1 to 0.3.</summary>
    public double ClipLow { get; init; }

    /// <summary>Share of the grey range cut off at the bright end by late windowing, −0.2 to 0.4.</summary>
    public double ClipHigh { get; init; }

    /// <summary>Low bone, bright air, as MONOCHROME1 data shown without its photometric interpretation.</summary>
    public bool Inverted { get; init; }

    /// <summary>Bits of grey kept, 8 to 16.</summary>
    public int Bits { get; init; } = 12;
}
