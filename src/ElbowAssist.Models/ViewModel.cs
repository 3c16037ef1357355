using System.Numerics.Tensors;
using ElbowAssist.Models.Decoding;
using ElbowAssist.Models.Folders;
using ElbowAssist.Models.Inference;

namespace ElbowAssist.Models;

/// <summary>A loaded view model: a whole standardised film to view and locator points. Safe to share between threads.</summary>
public sealed class ViewModel : IDisposable
{
    private readonly OnnxNetwork network;
    private readonly ClassOutput view;
    private readonly LocatorOutput locator;
    private readonly NamedOutput? viewError;

    private ViewModel(ModelFolder folder, OnnxNetwork network)
    {
        this.network = network;
        Folder = folder;
        view = folder.Manifest.Outputs.View!;
        locator = folder.Manifest.Outputs.Locator!;
        viewError = folder.Manifest.Outputs.ViewError;
    }

    /// <summary>The folder it was loaded from.</summary>
    public ModelFolder Folder { get; }

    /// <summary>Side of the input in pixels.</summary>
    public int Side => Folder.Manifest.Input.Width;

    /// <summary>Loads the network and checks it against the manifest.</summary>
    /// <param name="folder">A folder of the task <c>view</c>.</param>
    /// <param name="threads">Threads of one run, see <see cref="ModelThreads"/>.</param>
    /// <exception cref="ModelFolderException">The network does not load or does not fit the manifest.</exception>
    public static ViewModel Load(ModelFolder folder, int threads)
    {
        ArgumentNullException.ThrowIfNull(folder);
        var manifest = folder.Manifest;
        if (manifest.Task != "view")
        {
            throw new ModelFolderException(folder.Path, "holds no view model.");
        }

        var maps = manifest.Outputs.Locator!;
        var shapes = new Dictionary<string, long[]>(StringComparer.Ordinal)
        {
            [manifest.Outputs.View!.Name] = [1, manifest.Outputs.View.Classes.Count],
            [maps.Name] = [1, maps.Points.Count, manifest.Input.Height / maps.Stride, manifest.Input.Width / maps.Stride],
        };
        if (manifest.Outputs.ViewError is { } error)
        {
            shapes[error.Name] = [1, 2];
        }

        return new ViewModel(folder, new OnnxNetwork(folder, shapes, threads));
    }

    /// <summary>An input to fill.</summary>
    public ModelInputLease Rent() => new(network);

    /// <summary>Runs one pass.</summary>
    /// <exception cref="InvalidOperationException">The runtime failed.</exception>
    public ViewPass Run(ModelInputLease input)
    {
        ArgumentNullException.ThrowIfNull(input);
        var buffers = input.Buffers;
        network.Run(buffers);
        var probabilities = new float[view.Classes.Count];
        TensorPrimitives.SoftMax(buffers.Output(view.Name), probabilities);
        return new ViewPass(
            view.Classes.Select((c, i) => KeyValuePair.Create(c, (double)probabilities[i])).ToDictionary(StringComparer.Ordinal),
            Locate(buffers, "shaft"),
            Locate(buffers, "joint"),
            Locate(buffers, "forearm"),
            Locate(buffers, "mark"),
            LandmarkModel.ViewErrorOf(buffers, viewError));
    }

    /// <inheritdoc/>
    public void Dispose() => network.Dispose();

    private LocatedPoint Locate(NetworkBuffers buffers, string name)
    {
        var cells = Side / locator.Stride;
        var channel = locator.Points.ToList().IndexOf(name);
        var map = buffers.Output(locator.Name).AsSpan(channel * cells * cells, cells * cells);
        var peak = HeatmapDecoder.Decode(map, cells, cells, locator.Stride);
        return new LocatedPoint(peak.Position, peak.Share, peak.Spread);
    }
}
