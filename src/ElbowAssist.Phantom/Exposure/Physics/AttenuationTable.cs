namespace ElbowAssist.Phantom.Exposure.Physics;

/// <summary>
/// Linear attenuation of a material by photon energy: tabulated points, log-log interpolation between them. Outside
/// the table the slope of the nearest interval is carried on.
/// </summary>
public sealed class AttenuationTable
{
    private readonly double[] logEnergy;
    private readonly double[] logAttenuation;

    /// <param name="material">Name of the material.</param>
    /// <param name="source">Where the figures come from.</param>
    /// <param name="energiesKev">Photon energies in keV, ascending, at least two.</param>
    /// <param name="perCentimetre">Linear attenuation coefficients in 1/cm, one for each energy.</param>
    /// <exception cref="ArgumentException">The lists differ in length, hold fewer than two points or do not ascend.</exception>
    public AttenuationTable(
        string material, string source, IReadOnlyList<double> energiesKev, IReadOnlyList<double> perCentimetre)
    {
        ArgumentNullException.ThrowIfNull(energiesKev);
        ArgumentNullException.ThrowIfNull(perCentimetre);
        if (energiesKev.Count < 2 || energiesKev.Count != perCentimetre.Count ||
            energiesKev.Zip(energiesKev.Skip(1)).Any(pair => pair.First >= pair.Second))
        {
            throw new ArgumentException("An attenuation table needs at least two points with ascending energies.", nameof(energiesKev));
        }

        Material = material;
        Source = source;
        logEnergy = [.. energiesKev.Select(value => Math.Log(value))];
        logAttenuation = [.. perCentimetre.Select(value => Math.Log(value))];
    }

    /// <summary>Name of the material.</summary>
    public string Material { get; }

    /// <summary>Where the figures come from.</summary>
    public string Source { get; }

    /// <summary>Linear attenuation coefficient in 1/cm.</summary>
    /// <param name="energyKev">Photon energy in keV, positive.</param>
    public double PerCentimetre(double energyKev)
    {
        var x = Math.Log(energyKev);
        var upper = 1;
        while (upper < logEnergy.Length - 1 && x > logEnergy[upper])
        {
            upper++;
        }

        var share = (x - logEnergy[upper - 1]) / (logEnergy[upper] - logEnergy[upper - 1]);
        return Math.Exp(logAttenuation[upper - 1] + (share * (logAttenuation[upper] - logAttenuation[upper - 1])));
    }

    /// <summary>Share of photons of one energy that pass straight through a slab.</summary>
    /// <param name="energyKev">Photon energy in keV.</param>
    /// <param name="thicknessMm">Thickness in millimetres.</param>
    public double Transmission(double energyKev, double thicknessMm) =>
        Math.Exp(-PerCentimetre(energyKev) * thicknessMm / 10);
}
