using System.Text;
using ElbowAssist.Exchange.Dicom.Web;
using ElbowAssist.Exchange.Json;
using ElbowAssist.Exchange.Json.Coco;
using ElbowAssist.Exchange.Json.Facts;

namespace ElbowAssist.Exchange.Tests.Json;

/// <summary>JSON that is valid but for what its strings hold, which the parser only notices when they are asked for.</summary>
public sealed class UnreadableTextTests
{
    private static readonly byte[][] Texts =
    [
        [0x91], // a continuation byte alone
        "\\ud800"u8.ToArray(), // half of a surrogate pair
        [0xC3], // a lead byte alone
    ];

    public static TheoryData<int> Places => [0, 1, 2];

    [Theory]
    [MemberData(nameof(Places))]
    public void TextThatIsNone_IsTurnedAwayInASentence(int text)
    {
        byte[] Json(string template)
        {
            var parts = template.Split('@');
            return [.. Encoding.UTF8.GetBytes(parts[0]), .. Texts[text], .. Encoding.UTF8.GetBytes(parts[1])];
        }

        Assert.Throws<ExchangeFormatException>(() => SidecarJson.Read(Json("""{"sex": "@"}""")));
        Assert.Throws<ExchangeFormatException>(() => SidecarJson.Read(Json("""{"@": 1}""")));
        Assert.Throws<ExchangeFormatException>(() => ReadingJson.Read(Json("""{"schema": "@"}""")));
        Assert.Throws<ExchangeFormatException>(() => CocoKeypoints.Read(Json("""{"images": [], "annotations": [], "categories": [{"id": 1, "keypoints": ["@"]}]}""")));
        Assert.Throws<ExchangeFormatException>(() => LandmarkFile.Read(Json("""[{"name": "@", "x": 1, "y": 2}]"""), "film", 10, 10));
        Assert.Throws<DicomWebException>(() => DicomJson.Objects(Json("""[{"00080018": {"Value": ["@"]}}]""")));
        Assert.Throws<DicomWebException>(() => DicomJson.Objects(Json("""[{"@": 1}]""")));
    }
}
