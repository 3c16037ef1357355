using System.Net;
using System.Net.Http.Headers;
using ElbowAssist.Exchange.Dicom.Format;

namespace ElbowAssist.Exchange.Dicom.Web;

/// <summary>Requests to an archive. Only what may safely be asked twice is asked again after a failure.</summary>
internal sealed class DicomWebConnection(HttpClient http, Uri root, DicomLimits limits, TimeProvider time)
{
    // Common practice, no source: three tries, the wait doubling from half a second.
    private const int Tries = 3;
    private static readonly TimeSpan FirstWait = TimeSpan.FromMilliseconds(500);

    /// <summary>Gets a resource; asks again on a broken connection, 408, 429 or a server error.</summary>
    public async Task<(byte[] Body, MediaTypeHeaderValue? Type)> GetAsync(string path, string accept, CancellationToken cancellation)
    {
        var wait = FirstWait;
        for (var attempt = 1; ; attempt++)
        {
            try
            {
                using var request = new HttpRequestMessage(HttpMethod.Get, Address(path));
                request.Headers.TryAddWithoutValidation("Accept", accept);
                using var response = await http.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, cancellation).ConfigureAwait(false);
                if (response.IsSuccessStatusCode)
                {
                    return (await ReadAsync(response, cancellation).ConfigureAwait(false), response.Content.Headers.ContentType);
                }

                if (attempt == Tries || !MayPass(response.StatusCode))
                {
                    throw Refused(response.StatusCode);
                }
            }
            catch (Exception e) when (IsBroken(e, cancellation))
            {
                if (attempt == Tries)
                {
                    throw Unreachable(e);
                }
            }

            await Task.Delay(wait, time, cancellation).ConfigureAwait(false);
            wait *= 2;
        }
    }

    /// <summary>Sends a body once. A null status means that the connection broke and nobody knows what became of it.</summary>
    public async Task<(HttpStatusCode? Status, byte[] Body)> PostOnceAsync(string path, HttpContent content, CancellationToken cancellation)
    {
        try
        {
            using var request = new HttpRequestMessage(HttpMethod.Post, Address(path)) { Content = content };
            request.Headers.TryAddWithoutValidation("Accept", "application/dicom+json");
            using var response = await http.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, cancellation).ConfigureAwait(false);
            return (response.StatusCode, await ReadAsync(response, cancellation).ConfigureAwait(false));
        }
        catch (Exception e) when (IsBroken(e, cancellation))
        {
            return (null, []);
        }
    }

    private Uri Address(string path) => new(root.AbsoluteUri.TrimEnd('/') + "/" + path);

    private async Task<byte[]> ReadAsync(HttpResponseMessage response, CancellationToken cancellation)
    {
        using var stream = await response.Content.ReadAsStreamAsync(cancellation).ConfigureAwait(false);
        using var body = new MemoryStream();
        var buffer = new byte[81920];
        for (int read; (read = await stream.ReadAsync(buffer, cancellation).ConfigureAwait(false)) > 0;)
        {
            if (body.Length + read > limits.MaxBytes)
            {
                throw new DicomWebException("The archive's answer is larger than the limit for a film.");
            }

            body.Write(buffer, 0, read);
        }

        return body.ToArray();
    }

    private static bool MayPass(HttpStatusCode status) =>
        status is HttpStatusCode.RequestTimeout or HttpStatusCode.TooManyRequests || (int)status >= 500;

    // A timeout of the client looks like a cancellation that nobody asked for.
    private static bool IsBroken(Exception e, CancellationToken cancellation) =>
        e is HttpRequestException or IOException || (e is TaskCanceledException && !cancellation.IsCancellationRequested);

    private static DicomWebException Refused(HttpStatusCode status) => new(FormattableString.Invariant(
        $"The archive answered with HTTP status {(int)status}; check the address of its DICOMweb service and the right to use it."))
    {
        Status = status,
    };

    private static DicomWebException Unreachable(Exception e) => new("The archive cannot be reached; check its address and the network.", e);
}
