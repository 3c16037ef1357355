using CsCheck;
using ElbowAssist.Phantom.Exposure.Physics;

namespace ElbowAssist.Phantom.Tests.Exposure;

public sealed class TubeSpectrumTests
{
    [Fact]
    public void HigherVoltage_AndThickerFilter_HardenTheBeam() =>
        Gen.Select(Gen.Double[45, 75], Gen.Double[1.5, 6]).Sample((kilovolts, filter) =>
        {
            var spectrum = new TubeSpectrum(kilovolts, filter);
            Assert.Equal(1, spectrum.PhotonShares.Sum(), 1e-12);
            Assert.True(spectrum.EnergiesKev[^1] < kilovolts);
            Assert.True(new TubeSpectrum(kilovolts + 5, filter).MeanEnergyKev > spectrum.MeanEnergyKev);
            Assert.True(new TubeSpectrum(kilovolts, filter + 1).MeanEnergyKev > spectrum.MeanEnergyKev);
        });
}
