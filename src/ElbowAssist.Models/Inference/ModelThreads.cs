namespace ElbowAssist.Models.Inference;

/// <summary>
/// How many looks at one film run side by side. Each run of a network stays on one thread: with more, sums are formed in
/// another order, and the last digits of a reading would tell how busy the machine was.
/// </summary>
public static class ModelThreads
{
    /// <summary>For one film at a time: two, or one on a single core. More than the cores make it slower.</summary>
    public static int Interactive => Math.Min(2, Environment.ProcessorCount);

    /// <summary>For many films at once, each on its own thread.</summary>
    public static int Batch => 1;
}
