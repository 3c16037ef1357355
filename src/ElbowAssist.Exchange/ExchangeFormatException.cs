namespace ElbowAssist.Exchange;

/// <summary>A file that does not say what its format asks for. The message is one sentence fit for the user.</summary>
public sealed class ExchangeFormatException : Exception
{
    /// <summary>Creates the exception with a sentence that says what is wrong and where.</summary>
    public ExchangeFormatException(string message)
        : base(message)
    {
    }

    /// <summary>Creates the exception with a sentence and the error underneath.</summary>
    public ExchangeFormatException(string message, Exception innerException)
        : base(message, innerException)
    {
    }

    /// <summary>Creates the exception without saying where; prefer the other constructors.</summary>
    public ExchangeFormatException()
        : base("The file does not follow its format.")
    {
    }
}
