namespace ElbowAssist.Drawing.Report;

/// <summary>Numbers the sources of a report in the order in which they are first named.</summary>
internal sealed class ReportSources
{
    private readonly List<string> citations = [];

    /// <summary>Citations in the order of their numbers.</summary>
    public IReadOnlyList<string> Citations => citations;

    /// <summary>The number of a citation, counted from 1.</summary>
    public int NumberOf(string citation)
    {
        var index = citations.IndexOf(citation);
        if (index < 0)
        {
            citations.Add(citation);
            index = citations.Count - 1;
        }

        return index + 1;
    }

    /// <summary>The numbers of a source that may name several publications, e.g. <c>[1, 4]</c>.</summary>
    public string Mark(string source) =>
        $"[{string.Join(", ", source.Split("; ", StringSplitOptions.RemoveEmptyEntries).Select(NumberOf))}]";
}
