using System.Text.Json;
using ElbowAssist.Exchange.Tests.Dicom.Support;
using ElbowAssist.Testing;

namespace ElbowAssist.Browser.Page;

/// <summary>The reading page in real Chromium, from the program as it is built.</summary>
public sealed class ReadingPageTests(ServedPage page) : IClassFixture<ServedPage>
{
    private const string Adult = "adult-effusion";
    private const string Child = "child-supracondylar";
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
    public void ADraggedLandmark_TakesItsLinesAlong_AndUndoBringsThemBack()
    {
        var seen = page.Act("drag", Adult);
        string? Line(string when) => seen.GetProperty(when).GetString();
        Assert.NotNull(Line("before"));
        Assert.NotEqual(Line("before"), Line("during"));
        Assert.NotEqual(Line("during"), Line("back"));
        Assert.Equal(Line("before"), Line("back"));
        Assert.NotEqual(Line("back"), Line("nudged"));
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
            Nothing(size.Value.GetProperty("axe"), size.Name);
            Nothing(size.Value.GetProperty("errors"), size.Name);
        }
    }

    private static void Nothing(JsonElement findings, string where) =>
        Assert.True(findings.GetArrayLength() == 0, $"{where}: {findings.GetRawText()}");
}
