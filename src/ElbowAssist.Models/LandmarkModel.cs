using ElbowAssist.Anatomy;
using ElbowAssist.Geometry;
using ElbowAssist.Models.Decoding;
using ElbowAssist.Models.Folders;
using ElbowAssist.Models.Inference;

namespace ElbowAssist.Models;

/// <summary>
/// A loaded landmark model: a standardised crop in the canonical pose to landmark proposals. Safe to share between
/// threads.
/// </summary>
public sealed class LandmarkModel : IDisposable
{
    private readonly OnnxNetwork network;
    private readonly ModelOutputs outputs;
    private readonly int[] mirrored;

    private LandmarkModel(ModelFolder folder, OnnxNetwork network)
    {
        this.network = network;
        Folder = folder;
        outputs = folder.Manifest.Outputs;
        Landmarks = [.. folder.Manifest.Landmarks.Select(l => l.Name)];
        mirrored = [.. folder.Manifest.Landmarks.Select(l => Landmarks.ToList().IndexOf(l.Mirror))];
    }

    /// <summary>The folder it was loaded from.</summary>
    public ModelFolder Folder { get; }

    /// <summary>The view it serves.</summary>
    public View View => ManifestRules.ViewOf(Folder.Manifest.Views[0]);

    /// <summary>Side of the input crop in pixels.</summary>
    public int Side => Folder.Manifest.Input.Width;

    /// <summary>Names of the landmarks in channel order.</summary>
    public IReadOnlyList<string> Landmarks { get; }

    /// <summary>Loads the network and checks it against the manifest.</summary>
    /// <param name="folder">A folder of the task <c>landmarks</c>.</param>
    /// <param name="threads">Threads of one run, see <see cref="ModelThreads"/>.</param>
    /// <exception cref="ModelFolderException">The network does not load or does not fit the manifest.</exception>
    public static LandmarkModel Load(ModelFolder folder, int threads)
    {
        ArgumentNullException.ThrowIfNull(folder);
        var manifest = folder.Manifest;
        if (manifest.Task != "landmarks")
        {
            throw new ModelFolderException(folder.Path, "holds no landmark model.");
        }

        long count = manifest.Landmarks.Count;
        var shapes = new Dictionary<string, long[]>(StringComparer.Ordinal);
        if (manifest.Outputs.Heatmaps is { } maps)
        {
            shapes[maps.Name] = [1, count, manifest.Input.Height / maps.Stride, manifest.Input.Width / maps.Stride];
        }

        Add(shapes, manifest.Outputs.Points, [1, count, 2]);
        Add(shapes, manifest.Outputs.Covariance, [1, count, 3]);
        Add(shapes, manifest.Outputs.Visibility, [1, count]);
        Add(shapes, manifest.Outputs.ViewError, [1, 2]);
        Add(shapes, manifest.Outputs.Features, [1, -1]);
        return new LandmarkModel(folder, new OnnxNetwork(folder, shapes, threads));
    }

    /// <summary>An input to fill.</summary>
    public ModelInputLease Rent() => new(network);

    /// <summary>Runs one pass.</summary>
    /// <param name="input">A filled input of this model.</param>
    /// <param name="isMirrored">Whether the crop shows the mirror image of the canonical pose.</param>
    /// <exception cref="InvalidOperationException">The runtime failed.</exception>
    public LandmarkPass Run(ModelInputLease input, bool isMirrored)
    {
        ArgumentNullException.ThrowIfNull(input);
        var buffers = input.Buffers;
        network.Run(buffers);
        var proposals = new Proposal[Landmarks.Count];
        for (var i = 0; i < proposals.Length; i++)
        {
            proposals[i] = Proposed(buffers, isMirrored ? mirrored[i] : i);
        }

        float[] features = outputs.Features is { } f ? [.. buffers.Output(f.Name)] : [];
        return new LandmarkPass(proposals, ViewErrorOf(buffers, outputs.ViewError), features);
    }

    /// <inheritdoc/>
    public void Dispose() => network.Dispose();

    internal static ViewError? ViewErrorOf(NetworkBuffers buffers, NamedOutput? output) =>
        output is { } named && buffers.Output(named.Name) is [var mean, var deviation] ? new ViewError(mean, deviation) : null;

    internal static double Probability(double logit) => 1 / (1 + Math.Exp(-logit));

    private Proposal Proposed(NetworkBuffers buffers, int channel)
    {
        var visibility = outputs.Visibility is { } v ? Probability(buffers.Output(v.Name)[channel]) : 1;
        var stated = outputs.Covariance is { } c ? CovarianceOf(buffers.Output(c.Name).AsSpan(3 * channel, 3)) : null;
        if (outputs.Points is { } points)
        {
            var at = buffers.Output(points.Name).AsSpan(2 * channel, 2);
            return new Proposal(new Point(at[0], at[1]), stated, visibility, 1, null, 0);
        }

        var (width, height) = (Side / outputs.Heatmaps!.Stride, Folder.Manifest.Input.Height / outputs.Heatmaps.Stride);
        var map = buffers.Output(outputs.Heatmaps.Name).AsSpan(channel * width * height, width * height);
        var peak = HeatmapDecoder.Decode(map, width, height, outputs.Heatmaps.Stride);
        return new Proposal(
            peak.Position, stated ?? peak.Spread, visibility, peak.Share, peak.Second.IsFinite ? peak.Second : null, peak.SecondShare);
    }

    private static Covariance? CovarianceOf(ReadOnlySpan<float> values) =>
        new Covariance(values[0], values[1], values[2]) is { IsValid: true } valid ? valid : null;

    private static void Add(Dictionary<string, long[]> shapes, NamedOutput? output, long[] shape)
    {
        if (output is not null)
        {
            shapes[output.Name] = shape;
        }
    }
}
