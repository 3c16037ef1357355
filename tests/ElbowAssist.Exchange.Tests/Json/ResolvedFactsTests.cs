using ElbowAssist.Anatomy;
using ElbowAssist.Exchange.Json.Facts;
using ElbowAssist.Reading;

namespace ElbowAssist.Exchange.Tests.Json;

public sealed class ResolvedFactsTests
{
    private static readonly FilmFacts Nothing = new("option");

    [Fact]
    public void Silence_LeavesEverythingUnknown()
    {
        var facts = ResolvedFacts.From(Nothing);
        Assert.Equal((null, "none", Side.Unknown, FilmContext.Unknown, null), (facts.RowSpacingMm, facts.SpacingSource, facts.Side, facts.Context, facts.View));
        Assert.Equal(Patient.Unknown, facts.Patient);
        Assert.Empty(facts.Conflicts);
    }

    [Fact]
    public void Option_OverridesSidecarAndSaysSo()
    {
        var facts = ResolvedFacts.From(
            new FilmFacts("option") { Sex = Sex.Female, View = View.Ap },
            new FilmFacts("sidecar") { Sex = Sex.Male, View = View.Ap, AgeMonths = 100 });
        Assert.Equal(new Patient(100, Sex.Female), facts.Patient);
        Assert.Equal(new Reason("sex-contradicted", "The option gives the sex as F, the sidecar as M; F is used."), Assert.Single(facts.Conflicts));
    }

    [Fact]
    public void Dicom_FillsWhatIsMissing()
    {
        var facts = ResolvedFacts.From(
            Nothing,
            new FilmFacts("sidecar") { Side = Side.Left },
            new FilmFacts("dicom") { Side = Side.Left, RowSpacingMm = 0.1, ColumnSpacingMm = 0.2 });
        Assert.Equal((0.1, 0.2, "dicom"), (facts.RowSpacingMm, facts.ColumnSpacingMm, facts.SpacingSource));
        Assert.Empty(facts.Conflicts);
    }

    [Fact]
    public void SideContradictedBetweenFiles_IsUnknownUntilAnOptionSettlesIt()
    {
        FilmFacts sidecar = new("sidecar") { Side = Side.Left }, dicom = new("dicom") { Side = Side.Right };
        var open = ResolvedFacts.From(Nothing, sidecar, dicom);
        Assert.Equal(Side.Unknown, open.Side);
        Assert.Contains("counts as unknown", Assert.Single(open.Conflicts).Text, StringComparison.Ordinal);

        var settled = ResolvedFacts.From(new FilmFacts("option") { Side = Side.Right }, sidecar, dicom);
        Assert.Equal(Side.Right, settled.Side);
        Assert.Contains("right is used", Assert.Single(settled.Conflicts).Text, StringComparison.Ordinal);
    }

    [Fact]
    public void AgeInYearsAndInMonths_OfTheSameChild_DoNotContradict()
    {
        Assert.Empty(ResolvedFacts.From(new FilmFacts("option") { AgeMonths = 84 }, new FilmFacts("sidecar") { AgeMonths = 90 }).Conflicts);
        Assert.Single(ResolvedFacts.From(new FilmFacts("option") { AgeMonths = 84 }, new FilmFacts("sidecar") { AgeMonths = 96 }).Conflicts);
    }
}
