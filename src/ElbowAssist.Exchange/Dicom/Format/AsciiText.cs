using System.Text;

namespace ElbowAssist.Exchange.Dicom.Format;

/// <summary>Our own sentences in files whose character set is not ours to choose.</summary>
internal static class AsciiText
{
    /// <summary>The text as it is if the encoding holds it, else with each foreign character replaced by its ASCII form.</summary>
    public static string Fit(string text, Encoding encoding)
    {
        if (encoding is UTF8Encoding || text.All(char.IsAscii))
        {
            return text;
        }

        var ascii = new StringBuilder(text.Length);
        foreach (var c in text)
        {
            ascii.Append(c switch
            {
                _ when char.IsAscii(c) => c.ToString(),
                '°' => " deg",
                '−' or '–' or '—' => "-",
                '±' => "+/-",
                '×' => "x",
                '≤' => "<=",
                '≥' => ">=",
                '’' or '‘' => "'",
                '“' or '”' => "\"",
                _ => "?",
            });
        }

        return ascii.ToString();
    }

    /// <summary>The text cut to a number of characters, as short text attributes demand.</summary>
    public static string Cut(string text, int length) => text.Length <= length ? text : text[..length].TrimEnd();
}
