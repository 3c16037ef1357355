namespace ElbowAssist.Batch;

/// <summary>A batch cannot go on; the message is one sentence that says what, where and what to do.</summary>
public sealed class BatchException : Exception
{
    /// <summary>Creates the exception.</summary>
    public BatchException(string message, Exception? inner = null)
        : base(message, inner)
    {
    }
}
