using System.Globalization;
using ElbowAssist.Phantom.Rendering.Field;

namespace ElbowAssist.Phantom.Mesh.Surfaces;

/// <summary>The words of an ASCII STL file one after another, with the line they stand in.</summary>
internal sealed class StlWords(string text, string name)
{
    private int at;

    /// <summary>Line of the last word, from 1.</summary>
    public int Line { get; private set; } = 1;

    /// <summary>Goes to the end of the line: names of solids may hold anything.</summary>
    public void SkipLine()
    {
        while (at < text.Length && text[at] != '\n')
        {
            at++;
        }
    }

    public void Expect(string word) => Next(word);

    /// <summary>The next word, which must be one of these.</summary>
    public string Next(params ReadOnlySpan<string> words)
    {
        var found = Word();
        foreach (var word in words)
        {
            if (string.Equals(found, word, StringComparison.OrdinalIgnoreCase))
            {
                return word;
            }
        }

        throw Wrong($"\"{string.Join("\" or \"", words.ToArray())}\"", found);
    }

    public Vec3 Vector() => new(Number(), Number(), Number());

    /// <summary>Nothing may follow: a file of several solids holds more than one bone.</summary>
    public void ExpectEnd()
    {
        if (Word() is { Length: > 0 } found)
        {
            throw Wrong("the end of the file", found);
        }
    }

    private float Number()
    {
        var found = Word();
        return float.TryParse(found, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) ? number : throw Wrong("a number", found);
    }

    private string Word()
    {
        while (at < text.Length && char.IsWhiteSpace(text[at]))
        {
            Line += text[at] == '\n' ? 1 : 0;
            at++;
        }

        var start = at;
        while (at < text.Length && !char.IsWhiteSpace(text[at]))
        {
            at++;
        }

        return text[start..at];
    }

    private InvalidDataException Wrong(string expected, string found)
    {
        var shown = found.Length == 0 ? "the file ends" : $"there is \"{found[..Math.Min(found.Length, 20)]}\"";
        return new InvalidDataException(string.Create(CultureInfo.InvariantCulture, $"{name} is no readable STL file: line {Line} should have {expected}, but {shown}."));
    }
}
