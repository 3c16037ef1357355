using System.IO.Compression;
using System.Text.Json;
using ElbowAssist.Exchange.Dicom.Format;
using ElbowAssist.Exchange.Dicom.Web;
using ElbowAssist.Exchange.Tests.Dicom.Support;
using ElbowAssist.Testing;
using SampleFilm = ElbowAssist.Exchange.Tests.Dicom.Support.SampleFilm;

namespace ElbowAssist.Browser.Page;

/// <summary>The reading page in real Chromium, from the program as it is built.</summary>
public sealed class ReadingPageTests(ServedPage page) : IClassFixture<ServedPage>
{
    private const string Adult = "adult-two-views";
    private const string Child = "child-two-views";
    private const int Budget = 25;

    [ToolFact("node", "npm", "chromium")]
    public void AdultStudy_FromFirstKeyToReport_WithinTheBudget_OwnAnswersFirst()
    {
        var seen = page.Act("adult", Adult);

        Assert.InRange(seen.GetProperty("acts").GetInt32(), 10, Budget);
        var before = seen.GetProperty("before");
        Assert.False(before.GetProperty("leaks").GetBoolean());
        Assert.Equal((0, 0), (before.GetProperty("overlay").GetInt32(), before.GetProperty("values").GetInt32()));
        var shown = seen.GetProperty("shown");
        Assert.True(shown.GetProperty("overlay").GetInt32() > 2);
        Assert.True(shown.GetProperty("values").GetInt32() > 2);
        Assert.Contains("differ by", shown.GetProperty("difference").GetString(), StringComparison.Ordinal);
        // Measurements of every film of the study, not only of the one on view.
        Assert.Equal(["Left lateral", "Left AP"], seen.GetProperty("panels").EnumerateArray().Select(p => p.GetString()));
        Assert.NotEqual(seen.GetProperty("turn")[0].GetString(), seen.GetProperty("turn")[1].GetString());
        Assert.Equal("The read is closed", seen.GetProperty("title").GetString());
        Assert.StartsWith("ELBOW RADIOGRAPHS: A SECOND LOOK", seen.GetProperty("copied").GetString(), StringComparison.Ordinal);
        Assert.EndsWith("Nothing here excludes a fracture.", seen.GetProperty("caution").GetString(), StringComparison.Ordinal);
        ForbiddenWords.AssertNone(seen.GetProperty("words").GetString()!, "the page");
        Assert.Empty(seen.GetProperty("foreign").EnumerateArray());
        Assert.All(seen.GetProperty("axe").EnumerateObject(), screen => Nothing(screen.Value, screen.Name));
        Nothing(seen.GetProperty("errors"), "errors");
    }

    [ToolFact("node", "npm", "chromium")]
    public void ChildStudy_HasGrowthCentres_AndTheirStripAfterTheReadersMarks()
    {
        var seen = page.Act("child", Child);
        Assert.Contains(seen.GetProperty("steps").EnumerateArray(), s => s.GetString()!.StartsWith("Growth centres", StringComparison.Ordinal));
        Assert.True(seen.GetProperty("strip").GetBoolean());
        Nothing(seen.GetProperty("axe"), "axe");
        Nothing(seen.GetProperty("errors"), "errors");
        ForbiddenWords.AssertNone(seen.GetProperty("words").GetString()!, "the page");
    }

    [ToolFact("node", "npm", "chromium")]
    public void ARefusedAndABrokenFilm_ReadAsHelp_AndNamesStayText()
    {
        var photo = page.Write("<img src=x onerror=alert(1)>.png", PlainPng.Blank(400, 400));
        var broken = page.Write("broken.png", PlainPng.Blank(400, 400)[..60]);

        var seen = page.Act("refused", photo, broken);

        var notes = seen.GetProperty("notes").GetString();
        Assert.Contains("No reading of this film", notes, StringComparison.Ordinal);
        Assert.Contains("look for a fracture before blaming the view", notes, StringComparison.Ordinal);
        Assert.Contains("broken.png", notes, StringComparison.Ordinal);
        Assert.Equal(0, seen.GetProperty("lines").GetInt32());
        Assert.False(seen.GetProperty("markup").GetBoolean());
        Nothing(seen.GetProperty("axe"), "axe");
        Nothing(seen.GetProperty("errors"), "errors");
    }

    [ToolFact("node", "npm", "chromium")]
    public void DroppedFilms_ShowTheirProgress_CanBeStopped_AndABrokenOneStopsNoOther()
    {
        var broken = page.Write("<img src=x onerror=alert(1)>.png", File.ReadAllBytes(Demo(Adult, "left-ap.png"))[..3000]);

        var seen = page.Act("arrivals", broken, Demo(Adult, "left-ap.png"), Demo(Adult, "left-lateral.png"));

        Assert.True(seen.GetProperty("progress").GetBoolean());
        Assert.Equal(
            ["left-ap.png added", "left-lateral.png added", "<img src=x onerror=alert(1)>.png added", "left-behind.png left out"],
            seen.GetProperty("arriving").EnumerateArray().Select(a => a.GetString()));
        Assert.Equal(["AP", "Lateral", "<img src=x onerror=alert(1)>.png"], seen.GetProperty("tabs").EnumerateArray().Take(3).Select(t => t.GetString()));
        Assert.Contains("<img src=x onerror=alert(1)>.png is a PNG file that ends too early", seen.GetProperty("notes").GetString(), StringComparison.Ordinal);
        Assert.False(seen.GetProperty("markup").GetBoolean());
        Nothing(seen.GetProperty("axe"), "axe");
        Nothing(seen.GetProperty("errors"), "errors");
    }

    [ToolFact("node", "npm", "chromium", "Orthanc")]
    public async Task AStudyOfTheArchive_OpensFromTheListAndByItsLink_AndItsTextsStayText()
    {
        using var http = new HttpClient();
        using var orthanc = await Orthanc.StartAsync(http);
        const string Described = "<script>alert(1)</script><b>Elbow</b>";
        byte[] File(int seed) => new SampleFilm { Seed = seed, With = b => b.Text(Tag.AccessionNumber, "A-31").Text(Tag.StudyDescription, Described) }.File();
        Assert.All(await new DicomWebClient(http, orthanc.Root).StoreAsync([File(1), File(2)]), o => Assert.Equal(StoreState.Stored, o.State));
        using var folder = new TemporaryFolder();
        using var served = ServedPage.With("--archive", orthanc.Root.AbsoluteUri, "--watch", folder.Path);

        var seen = served.Act("archive", "A-31", DicomFile.Parse(File(1), DicomLimits.Default).Dataset.Text(Tag.StudyInstanceUid)!, Demo(Adult, "left-ap.png"), folder.Path);

        Assert.Contains("Arrived in the watched folder", seen.GetProperty("arrived").GetString(), StringComparison.Ordinal);
        Assert.Equal([$"{Described}, A-31"], seen.GetProperty("found").EnumerateArray().Select(f => f.GetString()));
        Assert.False(seen.GetProperty("markup").GetBoolean());
        var first = seen.GetProperty("first");
        // Both films, the switch for two side by side, and the way to add more.
        Assert.Equal(4, first.GetProperty("tabs").GetArrayLength());
        Assert.StartsWith("#study/", first.GetProperty("address").GetString(), StringComparison.Ordinal);
        Assert.Equal(first.GetProperty("address").GetString(), seen.GetProperty("linked").GetString());
        Assert.Equal("The archive holds no elbow film of this study.", seen.GetProperty("nothing").GetString());
        Nothing(seen.GetProperty("axe"), "axe");
        Nothing(seen.GetProperty("errors"), "errors");
    }

    [ToolFact("node", "npm", "chromium")]
    public void AfterTheRead_ClassFollowUpOwnHandExportAndDeletion_AreThere()
    {
        var seen = page.Act("keeping", Adult);

        Assert.Contains("effusion, no break traced", seen.GetProperty("follow").GetString(), StringComparison.Ordinal);
        Assert.Contains("effusion, no break traced", seen.GetProperty("listed").GetString(), StringComparison.Ordinal);
        Assert.EndsWith("Radial head fracture on the film of day ten", seen.GetProperty("outcome").GetString(), StringComparison.Ordinal);
        // The teacher's line shows beside the learner's own, and not before.
        Assert.Equal([false, true], seen.GetProperty("teacher").EnumerateArray().Select(t => t.GetBoolean()));
        Assert.Contains("lie over yours", seen.GetProperty("told").GetString(), StringComparison.Ordinal);
        var hand = seen.GetProperty("hand");
        Assert.Equal("Your own film", hand.GetProperty("caption").GetString());
        Assert.Contains("This line and your earlier one differ by", hand.GetProperty("words").GetString(), StringComparison.Ordinal);
        Assert.Equal(404, seen.GetProperty("gone").GetInt32());
        string FileOf(string name) => seen.GetProperty("files").GetProperty(name).GetString()!;
        using (var export = ZipFile.OpenRead(FileOf("export")))
        {
            Assert.Contains("report.html", export.Entries.Select(e => e.FullName));
        }

        using (var backup = ZipFile.OpenRead(FileOf("backup")))
        {
            Assert.Contains("entries.jsonl", backup.Entries.Select(e => e.FullName));
        }

        // Nobody is named in what a class hands round.
        Assert.Equal(["schema", "lines"], JsonDocument.Parse(System.IO.File.ReadAllText(FileOf("lines"))).RootElement.EnumerateObject().Select(p => p.Name));
        Nothing(seen.GetProperty("axe"), "axe");
        Nothing(seen.GetProperty("errors"), "errors");
        ForbiddenWords.AssertNone(seen.GetProperty("words").GetString()!, "the page");
    }

    [ToolFact("node", "npm", "chromium")]
    public void ADraggedLandmark_TakesItsLinesAlong_AndUndoBringsThemBack()
    {
        var seen = page.Act("drag", Adult);
        string? Line(string when) => seen.GetProperty(when).GetString();
        Assert.NotNull(Line("before"));
        Assert.NotEqual(Line("before"), Line("during"));
        Assert.NotEqual(Line("during"), Line("back"));
        Assert.Equal(Line("before"), Line("back"));
        Assert.Equal(Line("after"), Line("forth"));
        Assert.NotEqual(Line("forth"), Line("nudged"));
        var silence = seen.GetProperty("silence");
        Assert.Contains("does not answer", silence.GetProperty("told").GetString(), StringComparison.Ordinal);
        Assert.Equal(Line("nudged"), silence.GetProperty("line").GetString());
        Assert.Equal(Line("forth"), Line("again"));
        Assert.True(seen.GetProperty("lags").GetArrayLength() > 5);
        Nothing(seen.GetProperty("errors"), "errors");
    }

    [ToolFact("node", "npm", "chromium")]
    public void KeysAlone_ReachEverything()
    {
        var seen = page.Act("keyboard", Adult);
        Assert.Contains("again", seen.GetProperty("own")[0].GetString(), StringComparison.Ordinal);
        Assert.Contains("differ by", seen.GetProperty("difference").GetString(), StringComparison.Ordinal);
        Assert.Contains("left and right are swapped", seen.GetProperty("badges").GetRawText(), StringComparison.Ordinal);
        Assert.Equal("", seen.GetProperty("original")[0].GetString()!.Trim());
        // Held, one key leaves nothing but the film.
        Assert.Equal([true, false], seen.GetProperty("bare").EnumerateArray().Select(b => b.GetBoolean()));
        Assert.True(seen.GetProperty("keys").GetBoolean());
        Assert.All(seen.GetProperty("stops").EnumerateArray(), s => Assert.True(s.GetProperty("tag").GetString() == "BODY" || s.GetProperty("seen").GetBoolean(), s.GetRawText()));
        Nothing(seen.GetProperty("errors"), "errors");
    }

    [ToolFact("node", "npm", "chromium")]
    public void ThePracticeRoom_MarksItsFilms_AndTellsTheTruthAfterTheAnswer()
    {
        var seen = page.Act("practice");
        Assert.All(seen.GetProperty("marked").EnumerateArray(), m => Assert.StartsWith("Simulated", m.GetString(), StringComparison.Ordinal));
        Assert.Contains("turned", seen.GetProperty("truth").GetString(), StringComparison.Ordinal);
        Assert.Contains("carry it", seen.GetProperty("truth").GetString(), StringComparison.Ordinal);
        Assert.Contains("1 film", seen.GetProperty("results").GetString(), StringComparison.Ordinal);
        Nothing(seen.GetProperty("axe"), "axe");
        Nothing(seen.GetProperty("errors"), "errors");
    }

    [ToolFact("node", "npm", "chromium")]
    public void APhone_APageAtTwiceItsSize_AndAWideScreen_AllFit()
    {
        foreach (var size in page.Act("sizes", Adult).EnumerateObject())
        {
            Assert.All(size.Value.GetProperty("overflow").EnumerateArray(), o => Assert.True(o.GetInt32() <= 0, $"{size.Name} is too wide"));
            if (size.Name == "phone")
            {
                // Two taps lay a line.
                Assert.Contains(size.Value.GetProperty("touched").EnumerateArray(), b => b.GetString()!.StartsWith("Lay the anterior humeral line again", StringComparison.Ordinal));
            }

            Nothing(size.Value.GetProperty("axe"), size.Name);
            Nothing(size.Value.GetProperty("errors"), size.Name);
        }
    }

    private static string Demo(string study, string film) => Path.Combine(Repository.Root, "src", "ElbowAssist.Cli", "Demo", study, film);

    private static void Nothing(JsonElement findings, string where) =>
        Assert.True(findings.GetArrayLength() == 0, $"{where}: {findings.GetRawText()}");
}
