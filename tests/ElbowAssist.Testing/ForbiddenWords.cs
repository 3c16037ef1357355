using System.Text.RegularExpressions;
using Xunit;

namespace ElbowAssist.Testing;

/// <summary>Words that could reassure and therefore stand in no output about a patient.</summary>
public static partial class ForbiddenWords
{
    /// <summary>
    /// Fails if a forbidden word stands in the text. The member name <c>"passed":</c> of the adequacy checks is part of
    /// the format, and <c>after-reduction</c> is a context; neither is a word about the patient.
    /// </summary>
    public static void AssertNone(string text, string where)
    {
        var match = Pattern().Match(text.Replace("\"passed\":", "", StringComparison.Ordinal));
        Assert.False(match.Success, match.Success ? $"{where} says \"{match.Value}\": …{Around(text, match.Value)}…" : null);
    }

    private static string Around(string text, string word)
    {
        var at = text.IndexOf(word, StringComparison.OrdinalIgnoreCase);
        return text.Substring(Math.Max(0, at - 40), Math.Min(80 + word.Length, text.Length - Math.Max(0, at - 40)));
    }

    [GeneratedRegex(@"\b(normal|normally|negative|negatively|clear|cleared|clearly|passed|excluded|reassuring|acceptable|acceptably|reduced)\b", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture)]
    private static partial Regex Pattern();
}
