using System.Net;

namespace ElbowAssist.Exchange.Dicom.Web;

/// <summary>An archive that cannot be reached or answers with something that is no DICOMweb. The message is one sentence for the user.</summary>
public sealed class DicomWebException : Exception
{
    /// <summary>An exception without a message.</summary>
    public DicomWebException()
    {
    }

    /// <summary>An exception with a sentence for the user.</summary>
    public DicomWebException(string message)
        : base(message)
    {
    }

    /// <summary>An exception with a sentence for the user and what caused it.</summary>
    public DicomWebException(string message, Exception innerException)
        : base(message, innerException)
    {
    }

    internal HttpStatusCode? Status { get; init; }
}
