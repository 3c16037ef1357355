using System.Net;
using System.Net.Http.Headers;
using System.Text;
using ElbowAssist.Batch.Films;
using ElbowAssist.Exchange.Dicom.Web;

namespace ElbowAssist.Batch.Tests.Results;

/// <summary>Archives that answer half, slowly, not at first, or name a film twice.</summary>
public sealed class UnreliableArchiveTests
{
    private const string Series = """[{"0020000D": {"Value": ["1.2"]}, "0020000E": {"Value": ["1.2.3"]}, "00180015": {"Value": ["ELBOW"]}}]""";
    private const string Instance = """{"00080016": {"Value": ["1.2.840.10008.5.1.4.1.1.1.1"]}, "00080018": {"Value": ["1.2.3.4"]}}""";
    private const string Film = "--b\r\nContent-Type: application/dicom\r\n\r\npixels\r\n--b--\r\n";

    [Theory]
    [InlineData("whole", true)]
    [InlineData("busy, then whole", true)]
    [InlineData("broken off, then whole", true)]
    [InlineData("broken off", false)]
    [InlineData("half without a word", false)]
    [InlineData("never", false)]
    [InlineData("something else", false)]
    public async Task Film_IsOpenedWhole_OrNotAtAll(string behaviour, bool opened)
    {
        using var archive = new Archive(behaviour);
        using var http = new HttpClient(archive) { Timeout = TimeSpan.FromMilliseconds(behaviour == "never" ? 200 : 20_000) };
        var source = new ArchiveSource(new DicomWebClient(http, new Uri("http://archive.invalid/"), time: new HastyClock()), new FilmQuery());
        archive.Quiet = true;
        var listed = new List<ListedFilm>();
        await foreach (var one in source.ListAsync(default))
        {
            listed.Add(one);
        }

        var film = Assert.Single(listed); // named twice, by two modalities
        archive.Quiet = false;
        var bytes = await source.OpenAsync(film, default);
        Assert.Equal(opened, bytes is not null);
        Assert.True(bytes is null || Encoding.ASCII.GetString(bytes.Content.Span) == "pixels");
    }

    private sealed class Archive(string behaviour) : HttpMessageHandler
    {
        private int asked;

        /// <summary>Whether it behaves for now.</summary>
        public bool Quiet { get; set; }

        protected override async Task<HttpResponseMessage> SendAsync(HttpRequestMessage request, CancellationToken cancellationToken)
        {
            var path = request.RequestUri!.AbsolutePath;
            if (!path.Contains("/instances/", StringComparison.Ordinal))
            {
                return Answer(path.EndsWith("/instances", StringComparison.Ordinal) ? $"[{Instance}, {Instance}]" : Series, "application/dicom+json");
            }

            var first = !Quiet && asked++ == 0;
            switch (Quiet ? "whole" : behaviour)
            {
                case "busy, then whole" when first:
                    return new HttpResponseMessage(HttpStatusCode.ServiceUnavailable);
                case "broken off, then whole" when first:
                case "broken off":
                    return Multipart(new StreamContent(new BreakingStream(Encoding.ASCII.GetBytes(Film[..40]))));
                case "half without a word":
                    return Multipart(new ByteArrayContent(Encoding.ASCII.GetBytes(Film[..44])));
                case "never":
                    await Task.Delay(Timeout.Infinite, cancellationToken);
                    break;
                case "something else":
                    return Answer("<html></html>", "text/html");
                default:
                    break;
            }

            return Multipart(new ByteArrayContent(Encoding.ASCII.GetBytes(Film)));
        }

        private static HttpResponseMessage Answer(string text, string type) =>
            new(HttpStatusCode.OK) { Content = new StringContent(text, Encoding.UTF8, type) };

        private static HttpResponseMessage Multipart(HttpContent content)
        {
            content.Headers.ContentType = MediaTypeHeaderValue.Parse("multipart/related; type=\"application/dicom\"; boundary=b");
            return new HttpResponseMessage(HttpStatusCode.OK) { Content = content };
        }
    }

    /// <summary>Gives its bytes and then breaks, as a connection does.</summary>
    private sealed class BreakingStream(byte[] bytes) : MemoryStream(bytes)
    {
        public override async ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken = default) =>
            await base.ReadAsync(buffer, cancellationToken) is var read and > 0 ? read : throw new IOException("The connection broke.");
    }

    /// <summary>Waits a hundredth of what it is asked to.</summary>
    private sealed class HastyClock : TimeProvider
    {
        public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period) =>
            base.CreateTimer(callback, state, dueTime > TimeSpan.Zero ? dueTime / 100 : dueTime, period);
    }
}
