using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using ElbowAssist.Geometry;
using ElbowAssist.Reading.Walks;

namespace ElbowAssist.Exchange.Json.Studies;

/// <summary>The block <c>walk</c>: proposed, moved and decided in lists of their own; times in UTC.</summary>
internal static class WalkBlock
{
    public static void Write(Utf8JsonWriter json, WalkRecord? walk)
    {
        if (walk is null)
        {
            json.WriteNull("walk");
            return;
        }

        json.WriteStartObject("walk");
        json.WriteString("version", StudyWords.Version.WordOf(walk.Version));
        WriteTime(json, "startedAt", walk.StartedAt);
        json.WriteBoolean("proposalsVisibleFromStart", walk.ProposalsVisibleFromStart);
        json.WriteObjects("proposed", walk.Proposed, static (j, p) =>
        {
            j.WriteString("topic", StudyWords.Topic.WordOf(p.Topic));
            j.WriteObjects("values", p.Values, static (v, value) =>
            {
                v.WriteString("film", value.FilmId);
                v.WriteString("name", value.Name);
                v.WriteNumberOrNull("value", value.Value);
                v.WriteString("state", Vocabularies.State.WordOf(value.State));
            });
            WriteTime(j, "at", p.At);
        });
        json.WriteObjects("moved", walk.Moved, static (j, m) =>
        {
            j.WriteString("film", m.FilmId);
            j.WriteString("landmark", m.Landmark);
            if (m.From is { } from)
            {
                j.WritePoint("from", from);
            }
            else
            {
                j.WriteNull("from");
            }

            j.WritePoint("to", m.To);
            WriteTime(j, "at", m.At);
        });
        json.WriteObjects("decided", walk.Decided, static (j, a) =>
        {
            j.WriteString("question", a.ItemId);
            j.WriteWords("choices", a.Choices);
            j.WriteString("note", a.Note);
            WriteTime(j, "at", a.At);
            j.WriteBoolean("toolWasVisible", a.ToolWasVisible);
        });
        json.WriteObjects("enhanced", walk.Enhanced, static (j, e) =>
        {
            j.WriteString("question", e.ItemId);
            WriteTime(j, "at", e.At);
        });
        json.WriteObjects("settled", walk.Settled, static (j, s) =>
        {
            j.WriteString("prompt", s.Code);
            j.WriteString("note", s.Note);
            WriteTime(j, "at", s.At);
        });
        if (walk.ConcludedAt is { } concluded)
        {
            WriteTime(json, "concludedAt", concluded);
        }
        else
        {
            json.WriteNull("concludedAt");
        }

        json.WriteEndObject();
    }

    public static WalkRecord Read(JsonCursor walk)
    {
        var record = new WalkRecord
        {
            Version = walk.Required("version").Word(StudyWords.Version),
            StartedAt = Time(walk.Required("startedAt")),
            ProposalsVisibleFromStart = walk.Required("proposalsVisibleFromStart").Flag(),
            Proposed = [.. walk.Required("proposed").Items(p => new ToolShown(
                p.Required("topic").Word(StudyWords.Topic),
                [.. p.Required("values").Items(v => new ProposedValue(
                    v.Required("film").Text(), v.Required("name").Text(), v.Nullable("value")?.Number(), v.Required("state").Word(Vocabularies.State)))],
                Time(p.Required("at"))))],
            Moved = [.. walk.Required("moved").Items(m => new LandmarkMove(
                m.Required("film").Text(), m.Required("landmark").Text(), m.Nullable("from") is { } from ? from.Point() : (Point?)null,
                m.Required("to").Point(), Time(m.Required("at"))))],
            Decided = [.. walk.Required("decided").Items(Answer)],
            Enhanced = [.. walk.Required("enhanced").Items(e => new EnhancedShown(e.Required("question").Text(), Time(e.Required("at"))))],
            Settled = [.. walk.Required("settled").Items(s => new PromptSettled(
                s.Required("prompt").Text(), s.Nullable("note")?.Text(), Time(s.Required("at"))))],
            ConcludedAt = walk.Nullable("concludedAt") is { } at ? Time(at) : null,
        };
        CheckQuestions(walk, record);
        return record;
    }

    private static WalkAnswer Answer(JsonCursor a) => new(
        a.Required("question").Text(),
        [.. a.Required("choices").Items(c => c.Text())],
        a.Nullable("note")?.Text(),
        Time(a.Required("at")),
        a.Required("toolWasVisible").Flag());

    private static void CheckQuestions(JsonCursor walk, WalkRecord record)
    {
        var definition = record.Version == WalkVersion.Adult ? WalkDefinition.AdultWalk : WalkDefinition.ChildWalk;
        foreach (var answer in record.Decided)
        {
            if (definition.Find(answer.ItemId) is not { } item)
            {
                throw walk.Required("decided").Fail($"answers \"{answer.ItemId}\", which is no question of this walk");
            }

            if (answer.Choices.FirstOrDefault(c => item.Choices.All(k => k.Code != c)) is { } unknown)
            {
                throw walk.Required("decided").Fail($"answers \"{answer.ItemId}\" with \"{unknown}\", which is no choice of it");
            }
        }
    }

    private static void WriteTime(Utf8JsonWriter json, string name, DateTimeOffset at) =>
        json.WriteString(name, at.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss.fff'Z'", CultureInfo.InvariantCulture));

    private static DateTimeOffset Time(JsonCursor cursor) =>
        DateTimeOffset.TryParse(cursor.Text(), CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal, out var at)
            ? at
            : throw cursor.Fail("must be a date and time");
}
