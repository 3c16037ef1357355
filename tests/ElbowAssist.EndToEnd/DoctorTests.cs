namespace ElbowAssist.EndToEnd;

public sealed class DoctorTests
{
    [Fact]
    public void Installation_UnderTest_Works()
    {
        var run = CommandLine.Run("doctor");
        Assert.Equal(0, run.ExitCode);
        Assert.Contains("Image decoding (OpenCV): works", run.Output, StringComparison.Ordinal);
        Assert.Contains("Drawing (Skia): works", run.Output, StringComparison.Ordinal);
    }
}
