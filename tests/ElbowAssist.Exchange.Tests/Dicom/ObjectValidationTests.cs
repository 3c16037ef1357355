using System.Globalization;
using ElbowAssist.Exchange.Dicom.Films;
using ElbowAssist.Exchange.Dicom.Presentation;
using ElbowAssist.Exchange.Dicom.Reports;
using ElbowAssist.Exchange.Tests.Dicom.Support;
using ElbowAssist.Reading;

namespace ElbowAssist.Exchange.Tests.Dicom;

/// <summary>
/// What dciodvfy (dicom3tools), dcmpschk and dsrdump (DCMTK) and the SR template validator of the PixelMed toolkit say of
/// our objects. tools/validating/dicom checks many readings; the default suits continuous integration.
/// </summary>
public sealed class ObjectValidationTests
{
    private static readonly DateTimeOffset Made = new(2026, 4, 1, 10, 17, 0, TimeSpan.Zero);

    private static int Count =>
        int.TryParse(Environment.GetEnvironmentVariable("ELBOWASSIST_READINGS"), NumberStyles.None, CultureInfo.InvariantCulture, out var n) ? n : 5;

    [ToolFact("dciodvfy", "dsrdump")]
    public void Reports_HaveNoErrorByTheObjectDefinition()
    {
        using var scratch = new Scratch();
        for (var seed = 0; seed < Count; seed++)
        {
            foreach (var kind in Enum.GetValues<ReportKind>())
            {
                var path = scratch.Write("report.dcm", StructuredReport.Write(Reading(seed), Source(seed), new(Made, kind, seed % 3 == 0 ? "Reader^Invented" : null)));
                AssertNoError(path, $"reading {seed}, {kind}");
                Tool.Run("dsrdump", path);
            }
        }
    }

    [ToolFact("dciodvfy", "dcmpschk", "dcmp2pgm")]
    public void PresentationStates_HaveNoErrorByTheObjectDefinition_AndPassTheSemanticCheck()
    {
        using var scratch = new Scratch();
        for (var seed = 0; seed < Count; seed++)
        {
            var path = scratch.Write("state.dcm", PresentationState.Write(Reading(seed), Source(seed), Made));
            AssertNoError(path, $"reading {seed}");
            var verdict = Tool.Run("dcmpschk", path);
            var complaints = verdict.Split('\n').Where(l => l.StartsWith("W:", StringComparison.Ordinal) || l.StartsWith("E:", StringComparison.Ordinal))
                .Where(l => !l.Contains("Test passed", StringComparison.Ordinal) && !l.StartsWith("W: Testing: ", StringComparison.Ordinal) && !l.Contains("ISO_IR 192", StringComparison.Ordinal));
            Assert.Contains("Test passed.", verdict, StringComparison.Ordinal);
            Assert.Empty(complaints);
            Tool.Run("dcmp2pgm", "-p", path, scratch.Write("film.dcm", Film(seed)), scratch["film.pgm"]);
        }
    }

    [ToolFact("java")]
    public void Reports_FollowTheTemplates()
    {
        using var scratch = new Scratch();
        foreach (var seed in new[] { 0, 4 })
        {
            // Minutes for a whole reading, and every group has the same form: a few of each kind will do.
            var whole = Reading(seed);
            var reading = Count > 5 ? whole : whole with { Landmarks = [.. whole.Landmarks.Take(2)], Measurements = [.. whole.Measurements.Take(3)] };
            var path = scratch.Write("report.dcm", StructuredReport.Write(reading, Source(seed), new(Made)));
            var verdict = Tool.Run(
                "java", "-Djdk.xml.xpathTotalOpLimit=0", "-Djdk.xml.xpathExprOpLimit=0", "-Djdk.xml.xpathExprGrpLimit=0",
                "-cp", "/usr/share/java/pixelmed.jar:/usr/share/java/commons-codec.jar", "com.pixelmed.validate.DicomSRValidator", path);

            // The validator misreads properties of numbers as being in the wrong place; it finds none when they are left out.
            var errors = verdict.Split('\n').Where(l => l.StartsWith("Error", StringComparison.Ordinal))
                .Where(l => !l.Contains("Incorrect relationship", StringComparison.Ordinal) || !l.Contains("HAS PROPERTIES", StringComparison.Ordinal));
            Assert.Empty(errors);
            Assert.Contains("1500", verdict, StringComparison.Ordinal);
        }
    }

    private static void AssertNoError(string path, string what)
    {
        var (_, verdict) = Tool.Try("dciodvfy", path);
        var errors = verdict.Split('\n').Where(l => l.StartsWith("Error", StringComparison.Ordinal)).ToList();
        Assert.True(errors.Count == 0, $"{what}: {string.Join('\n', errors)}");
    }

    private static FilmReading Reading(int seed) => SampleReading.Of(seed, 61, 47);

    private static byte[] Film(int seed) => new SampleFilm
    {
        Seed = seed,
        Photometric = seed % 2 == 0 ? "MONOCHROME2" : "MONOCHROME1",
        With = b =>
        {
            if (seed % 3 > 0)
            {
                b.Decimal(Exchange.Dicom.Format.Tag.WindowCenter, 2000).Decimal(Exchange.Dicom.Format.Tag.WindowWidth, 3000);
            }
        },
    }.File();

    private static DicomSource Source(int seed) => new DicomFilmReader().Read(Film(seed)).Source;
}
