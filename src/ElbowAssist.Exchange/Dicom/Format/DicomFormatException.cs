namespace ElbowAssist.Exchange.Dicom.Format;

/// <summary>
/// A DICOM file that cannot be used: damaged, beyond a limit, or of a kind that is out of scope. The message is one
/// sentence for the user, says the way out where there is one, and holds no identifier.
/// </summary>
public sealed class DicomFormatException : Exception
{
    /// <summary>An exception without a message.</summary>
    public DicomFormatException()
    {
    }

    /// <summary>An exception with a sentence for the user.</summary>
    public DicomFormatException(string message)
        : base(message)
    {
    }

    /// <summary>An exception with a sentence for the user and what caused it.</summary>
    public DicomFormatException(string message, Exception innerException)
        : base(message, innerException)
    {
    }

    internal static DicomFormatException Because(FormattableString sentence) => new(FormattableString.Invariant(sentence));

    internal static DicomFormatException Damaged(FormattableString what, Exception? cause = null) =>
        new($"The DICOM file is damaged: {FormattableString.Invariant(what)}; fetch it again from its source.", cause!);
}
