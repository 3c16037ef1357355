using ElbowAssist.Bench.Tables;

namespace ElbowAssist.Bench.Comparing;

/// <summary>How many films each entrant was asked about and answered.</summary>
internal static class EntrantTable
{
    public static Table Of(Contest contest) => new(
        "entrants",
        "films asked about, answered, refused as a whole, taken for the right view",
        ["entrant", "films", "patients", "answered", "refused", "viewRight", "withLandmarks"],
        [.. contest.Entrants.Select(e => Row(contest, e))]);

    private static IReadOnlyList<object> Row(Contest contest, Entrant entrant)
    {
        var asked = contest.Dataset.Films.Where(f => entrant.Views.Contains(f.Truth.View.Name)).ToList();
        var scored = contest.Scored[entrant.Name];
        return
        [
            entrant.Name, asked.Count, asked.Select(f => f.Patient).Distinct(StringComparer.Ordinal).Count(), asked.Count(f => entrant.Answers.ContainsKey(f.File)), scored.Count(f => f.Score.Refused),
            scored.Count(f => f.Score.ReadView == f.Score.View), scored.Count(f => f.MeanRadial is not null),
        ];
    }
}
