using System.Net.Http.Headers;
using System.Text;

namespace ElbowAssist.Exchange.Dicom.Web;

/// <summary>multipart/related bodies (RFC 2387) of application/dicom, as PS3.18 uses them.</summary>
internal static class MultipartRelated
{
    private const string Dicom = "application/dicom";

    public static HttpContent Of(ReadOnlyMemory<byte> file)
    {
        var part = new ReadOnlyMemoryContent(file);
        part.Headers.ContentType = new MediaTypeHeaderValue(Dicom);
        var boundary = "elbowassist-" + Guid.NewGuid().ToString("N");
        var body = new MultipartContent("related", boundary) { part };
        body.Headers.ContentType!.Parameters.Add(new NameValueHeaderValue("type", $"\"{Dicom}\""));
        return body;
    }

    /// <summary>The content of the first part.</summary>
    /// <exception cref="DicomWebException">There is no complete part.</exception>
    public static byte[] FirstPart(MediaTypeHeaderValue? type, byte[] body)
    {
        if (type?.MediaType == Dicom)
        {
            return body;
        }

        var boundary = type?.Parameters.FirstOrDefault(p => p.Name.Equals("boundary", StringComparison.OrdinalIgnoreCase))?.Value?.Trim('"');
        if (type?.MediaType != "multipart/related" || string.IsNullOrEmpty(boundary))
        {
            throw Broken();
        }

        var delimiter = Encoding.ASCII.GetBytes("--" + boundary);
        var start = body.AsSpan().IndexOf(delimiter);
        var headers = start < 0 ? -1 : body.AsSpan(start).IndexOf("\r\n\r\n"u8);
        if (headers < 0)
        {
            throw Broken();
        }

        var content = body.AsSpan(start + headers + 4);
        var end = content.IndexOf([.. "\r\n"u8, .. delimiter]);
        return end < 0 ? throw Broken() : content[..end].ToArray();
    }

    private static DicomWebException Broken() =>
        new("The archive's answer is no complete DICOM object; check the address of its DICOMweb service.");
}
