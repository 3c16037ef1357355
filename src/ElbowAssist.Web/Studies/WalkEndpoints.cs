using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Rules;
using ElbowAssist.Exchange.Json;
using ElbowAssist.Reading;
using ElbowAssist.Reading.Walks;
using ElbowAssist.Store;
using ElbowAssist.Store.Entries;
using ElbowAssist.Web.Problems;
using ElbowAssist.Web.Studies.Pages;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace ElbowAssist.Web.Studies;

/// <summary>The systematic read: own answers first, then the tool's; nothing is replaced.</summary>
internal static class WalkEndpoints
{
    private const int LongestNote = 2000;

    public static void Map(IEndpointRouteBuilder routes)
    {
        var study = routes.MapGroup("/api/studies/{study}").WithTags("The systematic read");
        study.MapPost("/question", Begin).WithSummary("State the question and begin the read").Produces<StudyPage>().ProducesProblem(400).ProducesProblem(404);
        study.MapPost("/films/{film}/words", FilmWord).WithSummary("Say what the film itself cannot").Produces<StudyPage>().ProducesProblem(400).ProducesProblem(404);
        study.MapPost("/answers", AnswerAll).WithSummary("Answer one or several questions; all are kept or none").Produces<StudyPage>().ProducesProblem(400).ProducesProblem(404).ProducesProblem(409);
        study.MapPost("/shown", Show).WithSummary("Show the tool's proposals on a topic, once its questions have the reader's own answers").Produces<StudyPage>().ProducesProblem(404).ProducesProblem(409);
        study.MapPost("/prompts/{code}", Settle).WithSummary("Say that a prompt was dealt with").Produces<StudyPage>().ProducesProblem(404).ProducesProblem(409);
        study.MapPost("/close", Close).WithSummary("Close the read").Produces<StudyPage>().ProducesProblem(404).ProducesProblem(409);
        study.MapPost("/outcome", Outcome).WithSummary("Enter what became of it; takes the study off the follow-up list").Produces<StudyPage>().ProducesProblem(404);
    }

    /// <summary>Changes a study and answers with it, or with the refusal.</summary>
    internal static IResult Change(string study, HttpRequest request, OpenStudies open, Func<OpenStudy, StudyStatus, (IReadOnlyList<StudyEvent> Events, Reason? Refusal)> decide)
    {
        if (open.Find(study) is not { } found)
        {
            return Problem.NotFound("study");
        }

        var refusal = found.Change(Who(request), status => decide(found, status));
        return refusal is null ? Results.Ok(StudyPages.Of(found)) : Problem.NotYet(refusal.Code, refusal.Text);
    }

    private static IResult Begin(string study, Question question, HttpRequest request, OpenStudies open, TimeProvider clock)
    {
        Sex? sex = null;
        if (question.Sex is { } word)
        {
            if (!Vocabularies.Sex.TryParse(word, out var known))
            {
                return Problem.BadRequest("sex is F, M or null.");
            }

            sex = known;
        }

        var side = Side.Unknown;
        if (question.InjuredSide is { } said && !Vocabularies.Side.TryParse(said, out side))
        {
            return Problem.BadRequest("injuredSide is left, right or unknown.");
        }

        if (MaturityOfWord(question.Maturity) is not { } maturity || question.AgeMonths is < 0 or > 1500)
        {
            return Problem.BadRequest("maturity is adult, child, adolescent or unknown, and ageMonths from 0 to 1500 or null.");
        }

        var decided = MaturityOf.Decide(new Patient(question.AgeMonths, sex), maturity);
        if (WalkDefinition.For(decided) is not { } definition)
        {
            return Problem.BadRequest("Say adult or child, or give the age.");
        }

        return Change(study, request, open, (_, status) =>
        {
            StudyEvent stated = new QuestionStated(question.AgeMonths, sex, side, maturity);
            // A read under way goes on where adult and child stay what they were.
            return status.Walk is { ConcludedAt: null } walk && walk.Version == definition.Version && walk.ProposalsVisibleFromStart == question.ProposalsVisible
                ? ([stated], null)
                : ([stated, new WalkBegun(new WalkKeeper(definition, clock).Begin(question.ProposalsVisible))], null);
        });
    }

    private static IResult FilmWord(string study, string film, FilmWords words, HttpRequest request, OpenStudies open)
    {
        Side? side = null;
        View? view = null;
        FilmContext? context = null;
        if (words.Side is { } s)
        {
            side = Vocabularies.Side.TryParse(s, out var known) ? known : null;
        }

        if (words.View is { } v)
        {
            view = Vocabularies.View.TryParse(v, out var known) ? known : null;
        }

        if (words.Context is { } c)
        {
            context = Vocabularies.Context.TryParse(c, out var known) ? known : null;
        }

        if ((words.Side is not null && side is null) || (words.View is not null && view is null) || (words.Context is not null && context is null))
        {
            return Problem.BadRequest($"side is {Vocabularies.Side.Choices}; view is {Vocabularies.View.Choices}; context is {Vocabularies.Context.Choices}.");
        }

        return open.Find(study) is { } found && found.Film(film) is null
            ? Problem.NotFound("film")
            : Change(study, request, open, (_, _) => ([new FilmStated(film, side, view, context, words.FullExtensionAndSupination)], null));
    }

    private static IResult AnswerAll(string study, IReadOnlyList<Answer> answers, HttpRequest request, OpenStudies open, TimeProvider clock) => answers.Any(a => a?.ItemId is null || a.Choices?.Any(c => c is null) == true)
        ? Problem.BadRequest("Every answer names its question and the choices taken.")
        : Change(study, request, open, (found, status) =>
        {
            if (status.Walk is not { } walk)
            {
                return ([], NotBegun);
            }

            var keeper = Keeper(walk, clock);
            List<StudyEvent> events = [];
            foreach (var answer in answers)
            {
                var note = answer.Note is { Length: > LongestNote } ? answer.Note[..LongestNote] : answer.Note;
                var outcome = keeper.Answer(walk, answer.ItemId, [.. answer.Choices ?? []], string.IsNullOrWhiteSpace(note) ? null : note);
                if (outcome.Refusal is { } refusal)
                {
                    return ([], refusal);
                }

                walk = outcome.Record;
                events.Add(new Answered(walk.Decided[^1] with { ToolWasVisible = walk.Decided[^1].ToolWasVisible || WasCompared(found, status, answer.ItemId) }));
            }

            return (events, null);
        });

    // A question whose line was shown beside the reader's own was answered with that line in view.
    private static bool WasCompared(OpenStudy study, StudyStatus status, string itemId) => status.Compared.Any(c =>
        study.Film(c.FilmId) is { } film && study.Reading(film) is { } reading && Curtain.QuestionOf(c.Name, reading.View.Name) == itemId);

    private static IResult Show(string study, ShowTopic wanted, HttpRequest request, OpenStudies open, TimeProvider clock) =>
        Change(study, request, open, (found, status) =>
        {
            if (status.Walk is not { } walk)
            {
                return ([], NotBegun);
            }

            if (WalkDefinition.ChildWalk.Steps.Select(s => s.Topic).Where(t => StudyPages.TopicWord(t) == wanted.Topic).ToList() is not [var topic])
            {
                return ([], new Reason("walk.unknown-topic", "There is no such step in the read."));
            }

            if (found.Films.Any(f => found.Reading(f) is null && OpenStudy.Unreadable(f) is null && !f.Proposal(found.Stated(f)?.View ?? View.Unknown).IsFaulted))
            {
                return ([], new Reason("films.being-read", "The films are still being read; try again in a moment."));
            }

            if (walk.ToolVisible(topic))
            {
                return ([], null);
            }

            var values = topic == WalkTopic.Alignment ? Values(found) : [];
            var outcome = Keeper(walk, clock).ShowTool(walk, topic, [.. values]);
            return outcome.Refusal is { } refusal ? ([], refusal) : ([new ProposalsShown(outcome.Record.Proposed[^1])], null);
        });

    internal static IEnumerable<ProposedValue> Values(OpenStudy study, string prefix = "") =>
        from film in study.Films
        let reading = study.Reading(film)
        where reading is not null
        from m in reading.Measurements
        where m.Name.StartsWith(prefix, StringComparison.Ordinal)
        select new ProposedValue(film.Stored.Id, m.Name, m.Value, m.State);

    private static IResult Settle(string study, string code, Note? note, HttpRequest request, OpenStudies open, TimeProvider clock) =>
        Change(study, request, open, (_, status) =>
        {
            if (status.Walk is not { } walk)
            {
                return ([], NotBegun);
            }

            var outcome = Keeper(walk, clock).Settle(walk, code, note?.Text);
            return outcome.Refusal is { } refusal ? ([], refusal) : ([new PromptDealtWith(outcome.Record.Settled[^1])], null);
        });

    private static IResult Close(string study, HttpRequest request, OpenStudies open, TimeProvider clock) =>
        Change(study, request, open, (_, status) =>
        {
            if (status.Walk is not { } walk)
            {
                return ([], NotBegun);
            }

            var outcome = Keeper(walk, clock).Conclude(walk);
            return outcome.Refusal is { } refusal
                ? ([], refusal)
                : ([new WalkClosed(outcome.Record.ConcludedAt!.Value), .. FollowUp(walk) is { } why ? [new FollowUpAsked(why)] : Array.Empty<StudyEvent>()], null);
        });

    // What is worth knowing later: an effusion whose fracture was not traced, and whatever stayed open.
    private static string? FollowUp(WalkRecord walk)
    {
        var marks = WalkMarks.Of(walk);
        var broken = walk.Decided.Select(d => d.ItemId).Distinct().Select(walk.StandingAnswer).Any(a => a!.Choices is [WalkChoices.TracedBreak]);
        return (marks.Effusion, broken, walk.StandingAnswer("conclusion.outcome")?.Choices) switch
        {
            (Call.Yes, false, _) => "effusion, no break traced",
            (_, _, ["fracture-suspected"]) => "fracture suspected",
            (_, _, ["cannot-judge"]) => "films could not be judged",
            _ => null,
        };
    }

    private static IResult Outcome(string study, Note note, HttpRequest request, OpenStudies open) => string.IsNullOrWhiteSpace(note.Text)
        ? Problem.BadRequest("Say what became of it.")
        : Change(study, request, open, (_, _) => ([new OutcomeEntered(note.Text.Length > LongestNote ? note.Text[..LongestNote] : note.Text)], null));

    internal static WalkKeeper Keeper(WalkRecord walk, TimeProvider clock) =>
        new(walk.Version == WalkVersion.Adult ? WalkDefinition.AdultWalk : WalkDefinition.ChildWalk, clock);

    internal static Reason NotBegun { get; } = new("walk.not-begun", "State the question first: side, age, adult or child.");

    private static string Who(HttpRequest request)
    {
        var who = Uri.UnescapeDataString(request.Headers["Reader"].ToString());
        return who.Length <= 40 ? who : who[..40];
    }

    private static Maturity? MaturityOfWord(string? word) => word switch
    {
        null or "unknown" => Maturity.Unknown,
        "adult" => Maturity.Adult,
        "adolescent" => Maturity.Adolescent,
        "child" => Maturity.Child,
        _ => null,
    };
}
