namespace ElbowAssist.Store;

/// <summary>The store cannot be opened, read or written; the message is one sentence without identifiers.</summary>
public sealed class StoreException : Exception
{
    /// <summary>Creates the exception.</summary>
    public StoreException(string message, Exception? innerException = null)
        : base(message, innerException)
    {
    }
}
