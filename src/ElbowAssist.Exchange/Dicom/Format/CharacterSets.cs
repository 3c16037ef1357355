using System.Text;

namespace ElbowAssist.Exchange.Dicom.Format;

/// <summary>Specific Character Set (0008,0005), PS3.3 C.12.1.1.2, for sets without code extensions.</summary>
internal static class CharacterSets
{
    /// <summary>The defined term of UTF-8.</summary>
    public const string Utf8 = "ISO_IR 192";

    /// <summary>
    /// The encoding of a value of Specific Character Set, or null where code extensions are used: such text is copied
    /// as bytes, never decoded.
    /// </summary>
    public static Encoding? Of(string? value)
    {
        var name = value?.Trim() switch
        {
            null or "" or "ISO_IR 6" => "us-ascii",
            Utf8 => "utf-8",
            "ISO_IR 100" => "iso-8859-1",
            "ISO_IR 101" => "iso-8859-2",
            "ISO_IR 109" => "iso-8859-3",
            "ISO_IR 110" => "iso-8859-4",
            "ISO_IR 144" => "iso-8859-5",
            "ISO_IR 127" => "iso-8859-6",
            "ISO_IR 126" => "iso-8859-7",
            "ISO_IR 138" => "iso-8859-8",
            "ISO_IR 148" => "iso-8859-9",
            "ISO_IR 203" => "iso-8859-15",
            "ISO_IR 166" => "windows-874",
            "ISO_IR 13" => "shift_jis",
            "GB18030" => "gb18030",
            "GBK" => "gbk",
            _ => null,
        };
        return name switch
        {
            null => null,
            "us-ascii" => Encoding.ASCII,
            "utf-8" => Encoding.UTF8,
            "iso-8859-1" => Encoding.Latin1,
            _ => CodePagesEncodingProvider.Instance.GetEncoding(name),
        };
    }
}
