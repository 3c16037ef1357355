using System.Numerics;
using ElbowAssist.Phantom.Exposure.Settings;
using ElbowAssist.Phantom.Rendering;

namespace ElbowAssist.Phantom.Exposure.Physics;

/// <summary>
/// The primary signal of an energy-integrating detector: the Beer–Lambert law summed over the spectrum, each photon
/// weighted by its energy and the share that the detector stops, as a share of the signal without any object.
/// </summary>
public sealed class BeamModel
{
    private readonly float[] weights;
    private readonly float[] soft;
    private readonly float[] fat;
    private readonly float[] bone;
    private readonly float[] metal;
    private readonly float[] cast;

    /// <summary>The model of a beam and its materials.</summary>
    public BeamModel(BeamSettings beam)
    {
        ArgumentNullException.ThrowIfNull(beam);
        var spectrum = new TubeSpectrum(beam.Kilovolts, beam.FilterMm);
        var energies = spectrum.EnergiesKev;
        var raw = energies
            .Select((energy, i) => spectrum.PhotonShares[i] * energy * DetectorResponse.Absorption(energy))
            .ToArray();
        var total = raw.Sum();
        weights = [.. raw.Select(w => (float)(w / total))];
        soft = PerMillimetre(Materials.SoftTissue, energies);
        fat = PerMillimetre(Materials.Adipose, energies);
        bone = PerMillimetre(Materials.CorticalBone, energies);
        metal = PerMillimetre(beam.Metal == MetalMaterial.Steel ? Materials.Steel : Materials.TitaniumAlloy, energies);
        cast = PerMillimetre(
            beam.Cast switch
            {
                CastMaterial.Plaster => Materials.Plaster,
                CastMaterial.WetPlaster => Materials.WetPlaster,
                _ => Materials.GlassFibre,
            },
            energies);
    }

    /// <summary>Signal behind given path lengths in millimetres, as a share of the signal in air.</summary>
    public double Transmission(double softMm, double fatMm, double boneMm, double metalMm, double castMm)
    {
        var sum = 0.0;
        for (var i = 0; i < weights.Length; i++)
        {
            sum += weights[i] * Math.Exp(
                -((soft[i] * softMm) + (fat[i] * fatMm) + (bone[i] * boneMm) + (metal[i] * metalMm) + (cast[i] * castMm)));
        }

        return sum;
    }

    /// <summary>Signal of every pixel of a projection.</summary>
    /// <param name="paths">Path lengths.</param>
    /// <param name="signal">Receives one value per pixel, row by row.</param>
    internal void Project(PathImage paths, float[] signal)
    {
        var count = paths.Width * paths.Height;
        var lanes = Vector<float>.Count;
        var i = 0;
        for (; i <= count - lanes; i += lanes)
        {
            ProjectLanes(paths, signal, i);
        }

        for (; i < count; i++)
        {
            signal[i] = (float)Transmission(paths.Soft[i], paths.Fat[i], paths.Bone[i], paths.Metal[i], paths.Cast[i]);
        }
    }

    private void ProjectLanes(PathImage paths, float[] signal, int at)
    {
        var s = new Vector<float>(paths.Soft, at);
        var f = new Vector<float>(paths.Fat, at);
        var b = new Vector<float>(paths.Bone, at);
        var m = new Vector<float>(paths.Metal, at);
        var c = new Vector<float>(paths.Cast, at);
        var foreign = m + c;
        var isPlain = Vector.EqualsAll(foreign, Vector<float>.Zero);
        if (isPlain && Vector.EqualsAll(s + f + b, Vector<float>.Zero))
        {
            Vector<float>.One.CopyTo(signal, at);
            return;
        }

        var sum = Vector<float>.Zero;
        for (var i = 0; i < weights.Length; i++)
        {
            var exponent = (s * soft[i]) + (f * fat[i]) + (b * bone[i]);
            if (!isPlain)
            {
                exponent += (m * metal[i]) + (c * cast[i]);
            }

            sum += Vector.Exp(-Vector.Min(exponent, new Vector<float>(80f))) * weights[i];
        }

        sum.CopyTo(signal, at);
    }

    private static float[] PerMillimetre(AttenuationTable table, IReadOnlyList<double> energies) =>
        [.. energies.Select(energy => (float)(table.PerCentimetre(energy) / 10))];
}
