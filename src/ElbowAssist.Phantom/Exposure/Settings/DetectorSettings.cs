namespace ElbowAssist.Phantom.Exposure.Settings;

/// <summary>Dose and detector.</summary>
public sealed record DetectorSettings
{
    /// <summary>Dose at the detector behind the arm, in µGy: 2.5 to 5 for extremities, less when underexposed.</summary>
    public double DoseMicrogray { get; init; } = 3.5;

    /// <summary>Share of the quanta that count (detective quantum efficiency at low frequency), 0.2 to 0.75.</summary>
    public double Efficiency { get; init; } = 0.65;

    /// <summary>Electronic noise per pixel, in quanta.</summary>
    public double ElectronicNoise { get; init; } = 6;

    /// <summary>Signal at which the detector saturates, as a multiple of the signal behind the arm.</summary>
    public double Saturation { get; init; } = 60;

    /// <summary>Standard deviation of the detector's blur in millimetres; 0.12 gives a modulation of 0.75 at 1 lp/mm.</summary>
    public double BlurMm { get; init; } = 0.12;

    /// <summary>Share of light spread far (veiling glare), 0 to 0.1.</summary>
    public double Glare { get; init; } = 0.02;
}
