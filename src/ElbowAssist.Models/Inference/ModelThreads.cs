namespace ElbowAssist.Models.Inference;

/// <summary>How many threads one run of a network uses.</summary>
public static class ModelThreads
{
    /// <summary>For one film at a time: two, or one on a single core. More than the cores make it slower.</summary>
    public static int Interactive => Math.Min(2, Environment.ProcessorCount);

    /// <summary>For many films at once, each on its own thread.</summary>
    public static int Batch => 1;
}
