using ElbowAssist.Exchange.Dicom.Format;
using ElbowAssist.Exchange.Dicom.Web;
using ElbowAssist.Web.Problems;
using Microsoft.AspNetCore.Http;

namespace ElbowAssist.Web.Archive;

/// <summary>The door to the one archive named when the service was started; callers cannot name another.</summary>
internal sealed class ArchiveDoor : IDisposable
{
    private readonly HttpClient? http;
    private readonly DicomWebClient? client;

    public ArchiveDoor(ServiceOptions options, TimeProvider clock)
    {
        if (options.Archive is { } root)
        {
            http = new HttpClient(new SocketsHttpHandler { AllowAutoRedirect = false }) { Timeout = options.Patience };
            if (options.ArchiveToken is { Length: > 0 } token)
            {
                http.DefaultRequestHeaders.Authorization = new("Bearer", token);
            }

            client = new DicomWebClient(http, root, DicomLimits.Default with { MaxBytes = (int)Math.Min(int.MaxValue, options.MaxRequestBytes) }, clock);
        }
    }

    public bool IsOpen => client is not null;

    public static bool IsUid(string? text) => text is { Length: > 0 and <= 64 } && text.All(c => char.IsAsciiDigit(c) || c == '.') && !text.Contains("..", StringComparison.Ordinal);

    /// <summary>Asks the archive, and answers with the refusal where there is none or it does not answer as it should.</summary>
    public async Task<IResult> AskAsync(Func<DicomWebClient, Task<IResult>> ask)
    {
        if (client is null)
        {
            return Problem.Of(404, "no-archive", "No archive", "No archive was named; start the service with --archive and the address of its DICOMweb service.");
        }

        try
        {
            return await ask(client).ConfigureAwait(false);
        }
        catch (DicomWebException e)
        {
            return Problem.Of(502, "archive", "The archive does not answer", e.Message);
        }
    }

    public void Dispose() => http?.Dispose();
}
