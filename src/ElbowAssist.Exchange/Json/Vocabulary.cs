using System.Collections.Frozen;

namespace ElbowAssist.Exchange.Json;

/// <summary>The fixed words that stand for the values of an enumeration in files and options.</summary>
/// <typeparam name="T">The enumeration.</typeparam>
public sealed class Vocabulary<T>
    where T : struct, Enum
{
    private readonly FrozenDictionary<T, string> words;
    private readonly FrozenDictionary<string, T> values;

    internal Vocabulary(params (T Value, string Word)[] entries)
    {
        words = entries.ToFrozenDictionary(e => e.Value, e => e.Word);
        values = entries.ToFrozenDictionary(e => e.Word, e => e.Value, StringComparer.Ordinal);
        Words = [.. entries.Select(e => e.Word)];
    }

    /// <summary>All words, in a fixed order.</summary>
    public IReadOnlyList<string> Words { get; }

    /// <summary>The words as a list for a sentence: <c>a, b or c</c>.</summary>
    public string Choices => Words.Count == 1 ? Words[0] : $"{string.Join(", ", Words.SkipLast(1))} or {Words[^1]}";

    /// <summary>The word of a value.</summary>
    /// <exception cref="KeyNotFoundException">The value is not one of the enumeration's.</exception>
    public string WordOf(T value) => words[value];

    /// <summary>The value of a word, exactly as written.</summary>
    public bool TryParse(string? word, out T value)
    {
        value = default;
        return word is not null && values.TryGetValue(word, out value);
    }
}
