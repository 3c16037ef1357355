using System.Collections.Immutable;
using System.Text.Json;
using ElbowAssist.Anatomy.Rules;

namespace ElbowAssist.Exchange.Json.Studies;

/// <summary>The block <c>marks</c>: what the reader marked.</summary>
internal static class MarksBlock
{
    public static void Write(Utf8JsonWriter json, ReaderMarks marks)
    {
        json.WriteStartObject("marks");
        json.WriteString("trauma", StudyWords.Call.WordOf(marks.Trauma));
        json.WriteString("effusion", StudyWords.Call.WordOf(marks.Effusion));
        json.WriteWords("injuries", marks.Injuries.Select(StudyWords.Injury.WordOf));
        json.WriteBoolean("displaced", marks.Displaced);
        json.WriteBoolean("dislocated", marks.Dislocated);
        json.WriteBoolean("reductionDone", marks.ReductionDone);
        json.WriteBoolean("open", marks.Open);
        json.WriteBoolean("unwell", marks.Unwell);
        json.WriteStartObject("growthCentres");
        foreach (var (centre, mark) in marks.GrowthCentres)
        {
            json.WriteString(StudyWords.Centre.WordOf(centre), StudyWords.Mark.WordOf(mark));
        }

        json.WriteEndObject();
        json.WriteEndObject();
    }

    public static ReaderMarks Read(JsonCursor marks) => new()
    {
        Trauma = marks.Optional("trauma")?.Word(StudyWords.Call) ?? Call.NotMade,
        Effusion = marks.Optional("effusion")?.Word(StudyWords.Call) ?? Call.NotMade,
        Injuries = [.. marks.Optional("injuries")?.Items(i => i.Word(StudyWords.Injury)) ?? []],
        Displaced = marks.Optional("displaced")?.Flag() ?? false,
        Dislocated = marks.Optional("dislocated")?.Flag() ?? false,
        ReductionDone = marks.Optional("reductionDone")?.Flag() ?? false,
        Open = marks.Optional("open")?.Flag() ?? false,
        Unwell = marks.Optional("unwell")?.Flag() ?? false,
        GrowthCentres = (marks.Optional("growthCentres")?.Members() ?? []).ToImmutableSortedDictionary(
            m => StudyWords.Centre.TryParse(m.Name, out var centre) ? centre : throw m.Value.Fail($"is no growth centre; use {StudyWords.Centre.Choices}"),
            m => m.Value.Word(StudyWords.Mark)),
    };
}
