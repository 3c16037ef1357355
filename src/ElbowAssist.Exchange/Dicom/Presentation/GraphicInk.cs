using System.Text;
using ElbowAssist.Exchange.Dicom.Format;

namespace ElbowAssist.Exchange.Dicom.Presentation;

/// <summary>
/// Colour says who laid something: the reader's is solid yellow, the tool's dashed sky blue, both with a dark halo.
/// Colours are CIELab as PS3.3 C.10.7.1.1 scales it (0–100 and −128–127 to 16 bits), computed from sRGB with D65.
/// </summary>
/// <param name="CieLab">L*, a*, b* as 16-bit values.</param>
/// <param name="Dashed">Dashed or solid.</param>
internal sealed record GraphicInk(IReadOnlyList<int> CieLab, bool Dashed)
{
    private const uint DashPattern = 0x00FF_00FF;

    /// <summary>sRGB 86, 180, 233.</summary>
    public static readonly GraphicInk Tool = new([45761, 29808, 23959], true);

    /// <summary>sRGB 240, 228, 66.</summary>
    public static readonly GraphicInk Reader = new([58401, 29471, 52288], false);

    /// <summary>Line Style Sequence of PS3.3 C.10.5.1.3; viewers that do not know it draw plain lines.</summary>
    public DicomDataset LineStyle()
    {
        var style = new DatasetBuilder(Encoding.ASCII)
            .UInt16(Tag.PatternOnColorCieLabValue, [.. CieLab])
            .Float(Tag.PatternOnOpacity, 1)
            .Float(Tag.LineThickness, 1)
            .Text(Tag.LineDashingStyle, Dashed ? "DASHED" : "SOLID")
            .Text(Tag.ShadowStyle, "OUTLINED")
            .Float(Tag.ShadowOffsetX, 0)
            .Float(Tag.ShadowOffsetY, 0)
            .UInt16(Tag.ShadowColorCieLabValue, 0, 32896, 32896)
            .Float(Tag.ShadowOpacity, 0.6);
        return (Dashed ? style.UInt32(Tag.LinePattern, DashPattern) : style).Build();
    }
}
