using System.Globalization;
using ElbowAssist.Reading.Walks;

namespace ElbowAssist.Drawing.Report;

/// <summary>What the reader found, in the reader's answers and nobody else's.</summary>
internal static class WalkContents
{
    public static IReadOnlyList<string> Facts(WalkRecord? walk)
    {
        if (walk is null)
        {
            return ["No systematic read was recorded."];
        }

        return
        [
            $"Begun {ReportWords.Time(walk.StartedAt)}, {(walk.ConcludedAt is { } end ? "closed " + ReportWords.Time(end) : "not closed")}.",
            walk.ProposalsVisibleFromStart
                ? "The tool's proposals were visible from the start."
                : "The tool's proposals were shown only after the reader's own answers to a step.",
            walk.Moved.Count == 0
                ? "The reader moved no landmark."
                : string.Create(CultureInfo.InvariantCulture, $"Landmarks moved or placed by the reader: {walk.Moved.Select(m => (m.FilmId, m.Landmark)).Distinct().Count()}."),
        ];
    }

    /// <summary>Steps with their answers, the conclusion first.</summary>
    public static IReadOnlyList<StepContent> Steps(WalkRecord? walk)
    {
        if (walk is null)
        {
            return [];
        }

        var definition = walk.Version == WalkVersion.Adult ? WalkDefinition.AdultWalk : WalkDefinition.ChildWalk;
        return
        [
            .. definition.Steps.OrderByDescending(s => s.Topic == WalkTopic.Conclusion)
                .Select(s => new StepContent(s.Title, LastAnswered(s, walk), [.. s.Items.Select(i => Answer(i, walk)).OfType<AnswerContent>()]))
                .Where(s => s.Answers.Count > 0),
        ];
    }

    /// <summary>Bones the reader could not trace, by their question.</summary>
    public static IEnumerable<string> CannotTrace(WalkRecord? walk)
    {
        if (walk is null)
        {
            yield break;
        }

        var definition = walk.Version == WalkVersion.Adult ? WalkDefinition.AdultWalk : WalkDefinition.ChildWalk;
        foreach (var item in definition.Steps.SelectMany(s => s.Items))
        {
            if (walk.StandingAnswer(item.Id) is { } answer && answer.Choices.Any(c => c is WalkChoices.CannotTrace or WalkChoices.CannotTell))
            {
                yield return item.Question.TrimEnd('?');
            }
        }
    }

    private static string LastAnswered(WalkStep step, WalkRecord walk)
    {
        var times = step.Items.Select(i => walk.StandingAnswer(i.Id)?.At).OfType<DateTimeOffset>().ToList();
        return times.Count == 0 ? "" : ReportWords.Clock(times.Max());
    }

    private static AnswerContent? Answer(WalkItem item, WalkRecord walk)
    {
        if (walk.StandingAnswer(item.Id) is not { } standing)
        {
            return null;
        }

        var first = walk.FirstAnswer(item.Id)!;
        var (now, before) = (Words(item, standing), Words(item, first));
        return new(item.Question, now, before == now ? null : before, standing.ToolWasVisible);
    }

    private static string Words(WalkItem item, WalkAnswer answer)
    {
        var labels = answer.Choices.Select(c => item.Choices.FirstOrDefault(k => k.Code == c)?.Label ?? c);
        var words = string.Join(", ", labels);
        return (words, answer.Note) switch
        {
            ("", null) => "none marked",
            ("", { } note) => note,
            (_, null) => words,
            (_, { } note) => $"{words} ({note})",
        };
    }
}
