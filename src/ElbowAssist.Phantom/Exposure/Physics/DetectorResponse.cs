namespace ElbowAssist.Phantom.Exposure.Physics;

/// <summary>
/// Share of photons that a caesium iodide detector stops. Own approximation: mass attenuation of CsI read at a few
/// energies on both sides of the K edges of iodine and caesium (33.2 and 36.0 keV, taken as one edge at 34.5), from
/// memory of the tables of Hubbell and Seltzer, and a layer of 0.18 g/cm².
/// </summary>
public static class DetectorResponse
{
    private const double EdgeKev = 34.5;

    private static readonly AttenuationTable BelowEdge =
        new("CsI below its K edges", "approximation", [15, 20, 30, EdgeKev], [60, 28, 9.1, 6.4]);

    private static readonly AttenuationTable AboveEdge =
        new("CsI above its K edges", "approximation", [EdgeKev, 40, 50, 60, 80], [32, 23, 13, 8, 3.7]);

    /// <summary>Share of photons absorbed, 0 to 1.</summary>
    /// <param name="energyKev">Photon energy in keV.</param>
    public static double Absorption(double energyKev)
    {
        const double gramsPerSquareCentimetre = 0.18;
        var table = energyKev < EdgeKev ? BelowEdge : AboveEdge;
        return 1 - Math.Exp(-table.PerCentimetre(energyKev) * gramsPerSquareCentimetre);
    }
}
