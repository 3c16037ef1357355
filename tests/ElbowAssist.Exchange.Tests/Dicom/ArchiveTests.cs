using System.Net;
using System.Text;
using ElbowAssist.Exchange.Dicom.Films;
using ElbowAssist.Exchange.Dicom.Format;
using ElbowAssist.Exchange.Dicom.Presentation;
using ElbowAssist.Exchange.Dicom.Reports;
using ElbowAssist.Exchange.Dicom.Web;
using ElbowAssist.Exchange.Tests.Dicom.Support;
using SampleFilm = ElbowAssist.Exchange.Tests.Dicom.Support.SampleFilm;

namespace ElbowAssist.Exchange.Tests.Dicom;

/// <summary>Against a real archive (Orthanc) and against one that misbehaves.</summary>
public sealed class ArchiveTests
{
    private static readonly DateTimeOffset Made = new(2026, 4, 1, 10, 17, 0, TimeSpan.Zero);

    [ToolFact("Orthanc")]
    public async Task StoreFindFetchReadStoreBack()
    {
        using var http = new HttpClient();
        using var orthanc = await Orthanc.StartAsync(http);
        var client = new DicomWebClient(http, orthanc.Root);
        var film = new SampleFilm().File();
        var knee = new SampleFilm { Seed = 2, With = b => b.Text(Tag.BodyPartExamined, "KNEE").Text(Tag.SeriesInstanceUid, "2.25.7") }.File();

        Assert.All(await client.StoreAsync([film, knee]), o => Assert.Equal(StoreState.Stored, o.State));
        var found = await client.FindFilmsAsync(new FilmQuery { From = new(2026, 3, 31), To = new(2026, 4, 2) });
        var fetched = await client.FetchAsync(Assert.Single(found));

        // The archive may rewrite the meta information; the data set is promised to stay as it was.
        Assert.Equal(Body(film), Body(fetched));
        var read = new DicomFilmReader().Read(fetched);
        Assert.True(read.Pixels.Span.SequenceEqual(new DicomFilmReader().Read(film).Pixels.Span));

        var reading = SampleReading.Of(1, read.Width, read.Height);
        ReadOnlyMemory<byte>[] objects =
            [StructuredReport.Write(reading, read.Source, new ReportOptions(Made)), PresentationState.Write(reading, read.Source, Made)];
        Assert.All(await client.StoreAsync(objects), o => Assert.Equal(StoreState.Stored, o.State));
        Assert.All(await client.StoreAsync(objects), o => Assert.Equal(StoreState.AlreadyThere, o.State));

        var report = DicomFile.Parse(objects[0], DicomLimits.Default).Dataset;
        var back = await client.FetchAsync(new(
            read.Source.StudyInstanceUid, report.Text(Tag.SeriesInstanceUid)!, report.Text(Tag.SopClassUid)!, report.Text(Tag.SopInstanceUid)!, null));
        Assert.Equal(Body(objects[0].ToArray()), Body(back));
        Assert.Empty(await client.FindFilmsAsync(new FilmQuery { From = new(2027, 1, 1) }));
    }

    [ToolFact("Orthanc")]
    public async Task OneBadObject_DoesNotStopTheOthers()
    {
        using var http = new HttpClient();
        using var orthanc = await Orthanc.StartAsync(http);
        var client = new DicomWebClient(http, orthanc.Root);
        var bad = new SampleFilm { Seed = 3, With = b => b.Empty(Tag.PatientId).Text(Tag.SeriesInstanceUid, "") }.File();

        var outcomes = await client.StoreAsync([bad, new SampleFilm().File()]);

        Assert.Equal([StoreState.Failed, StoreState.Stored], outcomes.Select(o => o.State));
        Assert.DoesNotContain("PHANTOM", outcomes[0].Sentence!, StringComparison.Ordinal);
    }

    [Fact]
    public async Task BrokenConnectionWhileSending_NeverStoresTwice()
    {
        using var archive = new MisbehavingArchive { BreakAfterStoring = true };
        using var http = new HttpClient(archive);
        var client = new DicomWebClient(http, new Uri("http://archive.invalid/dicom-web/"));

        var outcome = Assert.Single(await client.StoreAsync([new SampleFilm().File()]));

        Assert.Equal((StoreState.Stored, 1), (outcome.State, archive.Posts));
    }

    [Fact]
    public async Task ServerErrorWhileAsking_IsAskedAgain()
    {
        using var archive = new MisbehavingArchive { FailuresBeforeAnswer = 2 };
        using var http = new HttpClient(archive);
        var client = new DicomWebClient(http, new Uri("http://archive.invalid/dicom-web"));

        Assert.Equal(StoreState.Stored, Assert.Single(await client.StoreAsync([new SampleFilm().File()])).State);
    }

    [Fact]
    public async Task ArchiveThatCannotBeReached_IsOneSentence()
    {
        using var archive = new MisbehavingArchive { FailuresBeforeAnswer = int.MaxValue };
        using var http = new HttpClient(archive);
        var client = new DicomWebClient(http, new Uri("http://archive.invalid/dicom-web"));

        var outcome = Assert.Single(await client.StoreAsync([new SampleFilm().File()]));
        var exception = await Assert.ThrowsAsync<DicomWebException>(() => client.FindFilmsAsync(new FilmQuery()));

        Assert.Equal(StoreState.Failed, outcome.State);
        Assert.EndsWith(".", exception.Message, StringComparison.Ordinal);
    }

    private static byte[] Body(byte[] file) => file[(132 + 12 + BitConverter.ToInt32(file, 140))..];

    private sealed class MisbehavingArchive : HttpMessageHandler
    {
        private string? held;

        public bool BreakAfterStoring { get; init; }

        public int FailuresBeforeAnswer { get; set; }

        public int Posts { get; private set; }

        protected override async Task<HttpResponseMessage> SendAsync(HttpRequestMessage request, CancellationToken cancellationToken)
        {
            if (request.Method == HttpMethod.Get)
            {
                if (FailuresBeforeAnswer-- > 0)
                {
                    return new(HttpStatusCode.ServiceUnavailable);
                }

                var wanted = request.RequestUri!.Query.Split('=')[^1];
                return held == wanted
                    ? new(HttpStatusCode.OK) { Content = Json($$$"""[{"00080018":{"vr":"UI","Value":["{{{held}}}"]}}]""") }
                    : new(HttpStatusCode.NoContent);
            }

            Posts++;
            var body = await request.Content!.ReadAsByteArrayAsync(cancellationToken);
            var start = body.AsSpan().IndexOf("\r\n\r\n"u8) + 4;
            held = DicomFile.Parse(body.AsMemory(start), DicomLimits.Default).Dataset.Text(Tag.SopInstanceUid);
            return BreakAfterStoring
                ? throw new HttpRequestException("The connection broke.")
                : new(HttpStatusCode.OK) { Content = Json($$$"""{"00081199":{"vr":"SQ","Value":[{"00081155":{"vr":"UI","Value":["{{{held}}}"]}}]}}""") };
        }

        private static StringContent Json(string text) => new(text, Encoding.UTF8, "application/dicom+json");
    }
}
