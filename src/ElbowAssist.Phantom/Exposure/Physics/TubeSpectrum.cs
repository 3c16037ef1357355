namespace ElbowAssist.Phantom.Exposure.Physics;

/// <summary>
/// Photon spectrum of a tungsten tube at extremity voltages, after its filter: Kramers' thick-target law
/// (H. A. Kramers, Phil. Mag. 46, 1923: photons per keV proportional to kV/E − 1) behind aluminium. An approximation:
/// anode self-absorption is left to the filter, and the tungsten K lines are left out because they need more than
/// 69.5 kV.
/// </summary>
public sealed class TubeSpectrum
{
    private const double LowestEnergyKev = 15;
    private readonly double[] energies;
    private readonly double[] photons;

    /// <param name="kilovolts">Tube voltage, 40 to 90 kV.</param>
    /// <param name="filterMm">Total filtration in millimetres of aluminium, 1 to 10.</param>
    /// <param name="binKev">Width of an energy bin in keV.</param>
    /// <exception cref="ArgumentOutOfRangeException">A parameter outside its range.</exception>
    public TubeSpectrum(double kilovolts, double filterMm, double binKev = 2)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(kilovolts, 40);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(kilovolts, 90);
        ArgumentOutOfRangeException.ThrowIfLessThan(filterMm, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(filterMm, 10);
        ArgumentOutOfRangeException.ThrowIfLessThan(binKev, 0.1);
        Kilovolts = kilovolts;
        var bins = (int)Math.Ceiling((kilovolts - LowestEnergyKev) / binKev);
        var width = (kilovolts - LowestEnergyKev) / bins;
        energies = new double[bins];
        photons = new double[bins];
        for (var i = 0; i < bins; i++)
        {
            var energy = LowestEnergyKev + ((i + 0.5) * width);
            energies[i] = energy;
            photons[i] = ((kilovolts / energy) - 1) * Materials.Aluminium.Transmission(energy, filterMm);
        }

        var total = photons.Sum();
        for (var i = 0; i < bins; i++)
        {
            photons[i] /= total;
        }
    }

    /// <summary>Tube voltage in kV.</summary>
    public double Kilovolts { get; }

    /// <summary>Centres of the energy bins in keV.</summary>
    public IReadOnlyList<double> EnergiesKev => energies;

    /// <summary>Share of the photons in each bin; the shares add up to 1.</summary>
    public IReadOnlyList<double> PhotonShares => photons;

    /// <summary>Mean photon energy in keV.</summary>
    public double MeanEnergyKev => energies.Zip(photons, (energy, share) => energy * share).Sum();
}
