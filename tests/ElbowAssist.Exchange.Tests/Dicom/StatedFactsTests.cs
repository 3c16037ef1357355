using ElbowAssist.Anatomy;
using ElbowAssist.Exchange.Dicom.Films;
using ElbowAssist.Exchange.Dicom.Format;
using ElbowAssist.Exchange.Tests.Dicom.Support;

namespace ElbowAssist.Exchange.Tests.Dicom;

/// <summary>What a file states about spacing, patient, side and view, and what it cannot be read for.</summary>
public sealed class StatedFactsTests
{
    [Fact]
    public void CalibratedSpacing_AndDetectorSpacingWithMagnification_GiveTheSameMillimetres()
    {
        var calibrated = Read(b => b.Decimal(Tag.PixelSpacing, 0.125, 0.125).Text(Tag.PixelSpacingCalibrationType, "GEOMETRY")
            .Text(Tag.PixelSpacingCalibrationDescription, "phantom"));
        var magnified = Read(b => b.Decimal(Tag.EstimatedRadiographicMagnificationFactor, 1.2));
        var distances = Read(b => b.Decimal(Tag.DistanceSourceToDetector, 1200).Decimal(Tag.DistanceSourceToPatient, 1000));

        Assert.All([calibrated, magnified, distances], film =>
        {
            Assert.Equal(0.125, film.Spacing.RowMm!.Value, 12);
            Assert.Equal(0.125, film.Spacing.ColumnMm!.Value, 12);
            Assert.True(film.Spacing.InPatientPlane);
        });
        Assert.Contains("1.2", magnified.Spacing.Source, StringComparison.Ordinal);
    }

    [Fact]
    public void DetectorSpacing_WithoutMagnification_IsNamedForWhatItIs()
    {
        var film = Read(b => b.Decimal(Tag.ImagerPixelSpacing, 0.2, 0.1).Decimal(Tag.PixelSpacing, 0.2, 0.1));

        Assert.Equal((0.2, 0.1, 2.0, false), (film.Spacing.RowMm, film.Spacing.ColumnMm, film.Spacing.RowOverColumn, film.Spacing.InPatientPlane));
        Assert.Contains("magnification not corrected", film.Spacing.Source, StringComparison.Ordinal);
    }

    [Fact]
    public void NoSpacing_GivesNoMillimetres()
    {
        var film = Read(b => b.Empty(Tag.ImagerPixelSpacing).Integer(Tag.PixelAspectRatio, 3, 2));

        Assert.Equal(new DicomSpacing(null, null, 1.5, "none", false), film.Spacing);
    }

    [Fact]
    public void ContradictingMagnification_IsReported()
    {
        var film = Read(b => b.Decimal(Tag.EstimatedRadiographicMagnificationFactor, 1.2)
            .Decimal(Tag.DistanceSourceToDetector, 1200).Decimal(Tag.DistanceSourceToPatient, 1150));

        Assert.Contains(film.Conflicts, c => c.Code == "magnification-contradicted");
    }

    [Theory]
    [InlineData("20190315", "20260401", "", 84)]
    [InlineData("20190402", "20260401", "", 83)]
    [InlineData("", "20260401", "007Y", 84)]
    [InlineData("", "", "018M", 18)]
    [InlineData("", "", "026W", 5)]
    [InlineData("", "", "7Y", null)]
    [InlineData("20190315", "20260401", "040Y", null)]
    public void Age_IsCountedInCompletedMonths(string born, string taken, string age, int? months)
    {
        var film = Read(b => b.Text(Tag.PatientBirthDate, born).Text(Tag.AcquisitionDate, taken).Text(Tag.ContentDate, taken)
            .Text(Tag.StudyDate, taken).Text(Tag.PatientAge, age));

        Assert.Equal(months, film.Patient.AgeMonths);
    }

    [Theory]
    [InlineData("L", "", Side.Left, false)]
    [InlineData("", "R", Side.Right, false)]
    [InlineData("R", "R", Side.Right, false)]
    [InlineData("L", "R", Side.Unknown, true)]
    [InlineData("B", "L", Side.Unknown, false)]
    public void Side_OfTheImageCountsMore_AndContradictionsAreReported(string image, string series, Side side, bool conflict)
    {
        var film = Read(b => b.Text(Tag.ImageLaterality, image).Text(Tag.Laterality, series));

        Assert.Equal((side, conflict), (film.Side, film.Conflicts.Any(c => c.Code == "side-contradicted")));
    }

    [Theory]
    [InlineData("AP", View.Ap)]
    [InlineData("LL", View.Lateral)]
    [InlineData("RLO", View.Oblique)]
    [InlineData("", View.Unknown)]
    public void ViewPosition_IsAHint(string position, View view) => Assert.Equal(view, Read(b => b.Text(Tag.ViewPosition, position)).ViewHint);

    [Theory]
    [InlineData("FOR PROCESSING", "FOR PRESENTATION")]
    [InlineData("PALETTE", "palette")]
    [InlineData("FRAMES", "frames")]
    [InlineData("REPORT", "not a radiograph")]
    [InlineData("HUGE", "limit")]
    [InlineData("SHORT", "fewer pixels")]
    public void OutOfScope_IsOneSentenceWithTheWayOut(string kind, string word)
    {
        var exception = Assert.Throws<DicomFormatException>(() => Read(b => _ = kind switch
        {
            "FOR PROCESSING" => b.Text(Tag.SopClassUid, Uids.DigitalXRayForProcessing),
            "PALETTE" => b.Text(Tag.PhotometricInterpretation, "PALETTE COLOR"),
            "FRAMES" => b.Integer(Tag.NumberOfFrames, 2),
            "REPORT" => b.Text(Tag.SopClassUid, Uids.ComprehensiveReport),
            "HUGE" => b.UInt16(Tag.Rows, 60000).UInt16(Tag.Columns, 60000),
            _ => b.UInt16(Tag.Rows, 48),
        }));

        Assert.Contains(word, exception.Message, StringComparison.Ordinal);
        Assert.EndsWith(".", exception.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("PHANTOM", exception.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void TransferSyntaxOutOfScope_NamesTheWayOut()
    {
        var file = new SampleFilm().File();
        var bigEndian = System.Text.Encoding.Latin1.GetBytes(
            System.Text.Encoding.Latin1.GetString(file).Replace("1.2.840.10008.1.2.1\0", "1.2.840.10008.1.2.2\0", StringComparison.Ordinal));

        var exception = Assert.Throws<DicomFormatException>(() => new DicomFilmReader().Read(bigEndian));

        Assert.Contains("1.2.840.10008.1.2.2", exception.Message, StringComparison.Ordinal);
        Assert.Contains("gdcmconv --raw", exception.Message, StringComparison.Ordinal);
    }

    private static DicomFilm Read(Action<DatasetBuilder> with) => new DicomFilmReader().Read(new SampleFilm { With = with }.File());
}
