using System.Text.Json;
using ElbowAssist.Reading.Studies;

namespace ElbowAssist.Exchange.Json.Studies;

/// <summary>What follows from the films of a study; written for others, worked out anew when a study is read.</summary>
internal static class FindingBlocks
{
    public static void Write(Utf8JsonWriter json, Study study)
    {
        json.WriteObjects("crossViewNotes", study.CrossViewNotes, static (j, n) =>
        {
            j.WriteString("code", n.Code);
            j.WriteString("text", n.Text);
            j.WriteWords("films", n.FilmIds);
        });
        json.WriteObjects("sideDifferences", study.SideDifferences, static (j, d) =>
        {
            j.WriteString("name", d.Name);
            j.WriteString("unit", d.Unit);
            j.WriteString("first", d.FirstFilmId);
            j.WriteString("second", d.SecondFilmId);
            j.WriteNumber("value", d.Value);
            j.WriteNumbers("redraw95", d.Redraw95.Low, d.Redraw95.High);
            j.WriteNumberOrNull("limit", d.Limit);
            j.WriteString("state", StudyWords.Difference.WordOf(d.State));
        });
        json.WriteObjects("timeDifferences", study.TimeDifferences, static (j, d) =>
        {
            j.WriteString("name", d.Name);
            j.WriteString("unit", d.Unit);
            j.WriteString("side", Vocabularies.Side.WordOf(d.Side));
            j.WriteString("view", Vocabularies.View.WordOf(d.View));
            j.WriteString("earlier", d.EarlierFilmId);
            j.WriteString("later", d.LaterFilmId);
            j.WriteNumber("value", d.Value);
            j.WriteNumbers("redraw95", d.Redraw95.Low, d.Redraw95.High);
        });
        json.WriteObjects("missingViews", study.MissingViews, static (j, v) =>
        {
            j.WriteString("code", v.Code);
            j.WriteString("side", Vocabularies.Side.WordOf(v.Side));
            j.WriteString("text", v.Text);
        });
        json.WriteObjects("conflicts", study.Conflicts, static (j, c) =>
        {
            j.WriteString("code", c.Code);
            j.WriteString("text", c.Text);
            j.WriteWords("films", c.FilmIds);
            j.WriteBoolean("stopsExport", c.StopsExport);
        });
        var visible = study.VisiblePrompts;
        json.WriteObjects("prompts", study.Prompts, (j, p) =>
        {
            j.WriteString("code", p.Code);
            j.WriteString("text", p.Text);
            j.WriteString("source", p.Source);
            j.WriteString("urgency", StudyWords.Urgency.WordOf(p.Urgency));
            j.WriteWords("films", p.FilmIds);
            j.WriteBoolean("visible", visible.Contains(p));
        });
        json.WriteBoolean("exportStopped", study.ExportIsStopped);
    }
}
