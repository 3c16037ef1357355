using System.Net;
using System.Net.Http.Headers;
using ElbowAssist.Exchange.Dicom.Format;
using ElbowAssist.Exchange.Dicom.Web;
using ElbowAssist.Fuzzing.Service;

namespace ElbowAssist.Fuzzing;

/// <summary>Bodies that come over HTTP: landmarks to be measured, and answers of an archive.</summary>
internal static class Bodies
{
    private static readonly FilmReference Film = new("1.2", "1.2.3", Uids.DigitalXRayForPresentation, "1.2.3.4", null);

    /// <summary>The body of a request to measure; what its query may say is a target of its own.</summary>
    public static void Measure(byte[] body) =>
        Routes.Call("POST", "/api/measurements", [.. "?name=film&width=800&height=1000&side=left&sex=F&ageMonths=100&context=acute&rowSpacingMm=0.15\n\n"u8, .. body]);

    /// <summary>An archive's answer to a query.</summary>
    public static void ArchiveAnswer(byte[] body) => Targets.Said<DicomWebException>(() =>
        Client(body, "application/dicom+json").FindFilmsAsync(new FilmQuery { StudyInstanceUid = "1.2" }).GetAwaiter().GetResult());

    /// <summary>An archive's answer to a request for a film; its first line is the content type.</summary>
    public static void ArchiveFilm(byte[] body) => Targets.Said<DicomWebException>(() =>
    {
        var line = Array.IndexOf(body, (byte)'\n');
        var type = line > 0 ? System.Text.Encoding.Latin1.GetString(body, 0, line) : "";
        return Client(body[(line + 1)..], type).FetchAsync(Film).GetAwaiter().GetResult();
    });

    private static DicomWebClient Client(byte[] body, string type) =>
        new(new HttpClient(new Answer(body, type)), new Uri("http://archive.invalid/"), new DicomLimits { MaxBytes = 1 << 20 });

    private sealed class Answer(byte[] body, string type) : HttpMessageHandler
    {
        protected override Task<HttpResponseMessage> SendAsync(HttpRequestMessage request, CancellationToken cancellationToken)
        {
            var content = new ByteArrayContent(body);
            content.Headers.ContentType = MediaTypeHeaderValue.TryParse(type, out var parsed) ? parsed : null;
            return Task.FromResult(new HttpResponseMessage(HttpStatusCode.OK) { Content = content });
        }
    }
}
