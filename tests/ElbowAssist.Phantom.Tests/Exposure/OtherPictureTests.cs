using ElbowAssist.Phantom.NearMiss;
using ElbowAssist.Phantom.NotElbow;
using ElbowAssist.Phantom.NotRadiograph;
using ElbowAssist.Phantom.Pose;

namespace ElbowAssist.Phantom.Tests.Exposure;

public sealed class OtherPictureTests
{
    [Fact]
    public void NearMiss_IsAFilmOfWhatItSays_AndASeedAlwaysGivesTheSame()
    {
        var first = new OtherPictureSimulator().NearMiss(20, 64, Adequacy.Good);
        Assert.Equal(64 * 64, first.Pixels.Length);
        Assert.True(first.Pixels.Max() - first.Pixels.Min() > 10_000);
        Assert.True(first.PixelMm > 0);
        Assert.Contains(first.Shows, Enum.GetValues<BodyRegion>().Select(OtherPicture.Words).Append("arm-beside-elbow"));
        Assert.Equal(first.Pixels, new OtherPictureSimulator().NearMiss(20, 64, Adequacy.Good).Pixels);
        Assert.NotEqual(first.Pixels, new OtherPictureSimulator().NearMiss(21, 64, Adequacy.Good).Pixels);
    }

    [Fact]
    public void NotRadiograph_SaysWhatItShows_AndHasNoSpacing()
    {
        var shown = Enumerable.Range(0, 60).Select(seed => OtherPictureSimulator.NotRadiograph((ulong)seed, 64)).ToList();
        Assert.Equal(
            Enum.GetValues<PlainImageKind>().Select(OtherPicture.Words).Order(StringComparer.Ordinal),
            shown.Select(p => p.Shows).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal));
        Assert.All(shown, p => Assert.Null(p.PixelMm));
        Assert.Equal(PlainImages.Make(5, 64), shown[5].Pixels);
    }

    [Theory]
    [InlineData(BodyRegion.ParallelShafts, "parallel-shafts")]
    [InlineData(BodyRegion.Knee, "knee")]
    public void Kinds_AreNamedInWords(BodyRegion region, string words) => Assert.Equal(words, OtherPicture.Words(region));

    // a b      mirrored  b a      a quarter clockwise  d b    half  c d    three quarters  a c
    // c d                d c                           c a          a b                    b d
    [Fact]
    public void Disturbed_IsMirroredThenTurnedThenInverted()
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        for (ulong seed = 0; seed < 20; seed++)
        {
            var disturbed = new OtherPicture(seed, "knee", [1, 2, 3, 4], 2, 0.1).TurnedMirroredInverted();
            seen.Add(string.Concat(disturbed.Pixels.Select(p => "?abcd"[ushort.MaxValue - p])));
            Assert.Equal("knee", disturbed.Shows);
        }

        Assert.Equal(["acbd", "cdab", "dbca"], seen.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void SizesOutsideTheirRange_AreRefused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new OtherPictureSimulator().NearMiss(1, 63, Adequacy.Good));
        Assert.Throws<ArgumentOutOfRangeException>(() => OtherPictureSimulator.NotRadiograph(1, 5000));
    }
}
