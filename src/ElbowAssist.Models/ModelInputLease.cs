using ElbowAssist.Models.Inference;

namespace ElbowAssist.Models;

/// <summary>
/// The input of one run, to be filled in place and handed to the model it came from. Dispose it after the run; it then
/// serves the next one.
/// </summary>
public sealed class ModelInputLease : IDisposable
{
    private readonly OnnxNetwork network;
    private NetworkBuffers? buffers;

    internal ModelInputLease(OnnxNetwork network)
    {
        this.network = network;
        buffers = network.Rent();
    }

    /// <summary>Standardised film, row by row, Side × Side values.</summary>
    /// <exception cref="ObjectDisposedException">After disposal.</exception>
    public Span<float> Values => Buffers.Input;

    internal NetworkBuffers Buffers => buffers ?? throw new ObjectDisposedException(nameof(ModelInputLease));

    /// <inheritdoc/>
    public void Dispose()
    {
        if (buffers is { } held)
        {
            buffers = null;
            network.Return(held);
        }
    }
}
