using ElbowAssist.Drawing.Marks;

namespace ElbowAssist.Drawing.Wording;

/// <summary>Breaks sentences into lines.</summary>
internal static class TextLines
{
    public static IEnumerable<string> Wrap(string text, double width, double size)
    {
        var line = "";
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            var longer = line.Length == 0 ? word : $"{line} {word}";
            if (line.Length > 0 && Words.WidthOf(longer, size) > width)
            {
                yield return line;
                line = word;
            }
            else
            {
                line = longer;
            }
        }

        if (line.Length > 0)
        {
            yield return line;
        }
    }
}
