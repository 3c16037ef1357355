using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Anatomy.Rules;
using ElbowAssist.Exchange.Json;
using ElbowAssist.Exchange.Json.Studies;
using ElbowAssist.Geometry;
using ElbowAssist.Reading;
using ElbowAssist.Reading.Assembly;
using ElbowAssist.Reading.Walks;

namespace ElbowAssist.Web.Studies.Pages;

/// <summary>From an open study to what the page may show of it.</summary>
internal static class StudyPages
{
    // Topics on which the tool has something to show.
    private static readonly WalkTopic[] WithProposals = [WalkTopic.Views, WalkTopic.Alignment, WalkTopic.Effusion, WalkTopic.GrowthCentres];

    public static StudyPage Of(OpenStudy open)
    {
        var status = open.Status;
        var study = open.Assemble();
        // Prompts that rest on the tool's values wait until these are shown; those from the reader's own marks do not.
        var shown = Curtain.Shows(status, WalkTopic.Alignment);
        var prompts = study?.VisiblePrompts.Where(p => shown || p.FilmIds.Count == 0) ?? [];
        return new StudyPage(
            open.Stored.Id,
            open.Stored.Title,
            open.Stored.Origin,
            Caution.Text,
            Question(open, study?.Maturity ?? Maturity.Unknown),
            [.. open.Films.Select(f => FilmPages.Of(open, f))],
            status.Walk is { } walk ? Walk(open, walk) : null,
            [.. prompts.Select(p => new PromptPage(p.Code, p.Text, p.Source))],
            [.. study?.Conflicts.Select(c => c.Text) ?? []],
            shown ? [.. study?.CrossViewNotes.Select(n => n.Text) ?? []] : [],
            study?.ExportIsStopped == true,
            Curtain.ReportMayBeMade(status) && study is not null,
            status.FollowUp,
            status.Outcome,
            status.LastNumber);
    }

    private static QuestionPage Question(OpenStudy open, Maturity decided)
    {
        var question = open.Status.Question;
        var facts = open.Films.Where(f => f.Opened.IsCompletedSuccessfully).Select(f => f.Opened.Result.Facts).ToList();
        var sides = facts.Select(f => f.Side).Where(s => s != Side.Unknown).Distinct().ToList();
        var age = question?.AgeMonths ?? facts.Select(f => f.Patient.AgeMonths).FirstOrDefault(a => a is not null);
        var sex = question?.Sex ?? facts.Select(f => f.Patient.Sex).FirstOrDefault(s => s is not null);
        return new(
            age,
            sex is { } known ? Vocabularies.Sex.WordOf(known) : null,
            Vocabularies.Side.WordOf(question?.InjuredSide ?? (sides is [var only] ? only : Side.Unknown)),
            MaturityWord(question is not null ? MaturityOf.Decide(new Patient(age, sex), question.Maturity) : decided != Maturity.Unknown ? decided : MaturityOf.Decide(new Patient(age, sex))),
            question is not null);
    }

    internal static string MaturityWord(Maturity maturity) => maturity switch
    {
        Maturity.Child => "child",
        Maturity.Adolescent => "adolescent",
        Maturity.Adult => "adult",
        _ => "unknown",
    };

    private static WalkPage Walk(OpenStudy open, WalkRecord walk)
    {
        var definition = walk.Version == WalkVersion.Adult ? WalkDefinition.AdultWalk : WalkDefinition.ChildWalk;
        return new(
            walk.Version == WalkVersion.Adult ? "adult" : "child",
            walk.StartedAt,
            walk.ConcludedAt,
            walk.ProposalsVisibleFromStart,
            [.. definition.Steps.Select(s => new StepPage(
                TopicWord(s.Topic),
                s.Title,
                WithProposals.Contains(s.Topic),
                walk.ToolVisible(s.Topic),
                s.Items.Count(i => i is { Choices.Count: > 0, AllowsSeveral: false } && walk.FirstAnswer(i.Id) is null),
                [.. s.Items.Select(i => Item(open, walk, i))]))]);
    }

    internal static string TopicWord(WalkTopic topic) => topic switch
    {
        WalkTopic.History => "history",
        WalkTopic.Views => "views",
        WalkTopic.Alignment => "alignment",
        WalkTopic.Effusion => "effusion",
        WalkTopic.Cortex => "cortex",
        WalkTopic.GrowthCentres => "growth-centres",
        WalkTopic.SecondLook => "second-look",
        _ => "conclusion",
    };

    private static ItemPage Item(OpenStudy open, WalkRecord walk, WalkItem item)
    {
        var standing = walk.StandingAnswer(item.Id);
        var first = walk.FirstAnswer(item.Id);
        return new(
            item.Id,
            item.Question,
            item.Choices,
            item.AllowsSeveral,
            standing?.Choices,
            standing?.Note,
            standing?.ToolWasVisible == true,
            first is not null && standing is not null && !first.Choices.SequenceEqual(standing.Choices),
            [.. item.Crops.SelectMany(c => open.Films.Select(f => Crop(open, f, c)).OfType<CropPage>())]);
    }

    internal static CropPage? Crop(OpenStudy open, OpenFilm film, WalkCrop crop)
    {
        if (open.Reading(film) is not { Adequacy.Refused: false } reading || reading.View.Name != crop.View || LandmarkSet.Of(crop.View) is not { } set)
        {
            return null;
        }

        var places = reading.Landmarks.Where(l => l.Position is not null).ToDictionary(l => l.Name, l => l.Position!.Value, StringComparer.Ordinal);
        Point[] around = [.. crop.Around.Where(places.ContainsKey).Select(n => places[n])];
        if (around.Length == 0)
        {
            return null;
        }

        var w = ShaftWidth.InPixels(set, [.. set.Landmarks.Select(l => places.TryGetValue(l.Name, out var p) ? p : (Point?)null)]);
        // Rounded to a fifth of a width, so that the square shows where to look and not where the tool lays a landmark.
        var step = Math.Max(1, w / 5);
        double Round(double v) => Math.Round(v / step) * step;
        return new(film.Stored.Id, Round(around.Average(p => p.X)), Round(around.Average(p => p.Y)), Math.Round(crop.SideInW * w));
    }
}
