using System.Text.Json;
using ElbowAssist.Reading;

namespace ElbowAssist.Exchange.Json.Blocks;

/// <summary>The block that says what a film can and cannot carry.</summary>
internal static class AdequacyBlock
{
    public static void Write(Utf8JsonWriter json, Adequacy adequacy)
    {
        json.WriteStartObject("adequacy");
        json.WriteBoolean("refused", adequacy.Refused);
        json.WriteObjects("checks", adequacy.Checks, static (j, check) =>
        {
            j.WriteString("name", check.Name);
            j.WriteNumberOrNull("value", check.Value);
            j.WriteNumberOrNull("limit", check.Limit);
            j.WriteBoolean("passed", check.Passed);
            j.WriteString("reason", check.Reason);
        });
        json.WriteWords("canCarry", adequacy.CanCarry);
        json.WriteObjects("cannotCarry", adequacy.CannotCarry, static (j, item) =>
        {
            j.WriteString("name", item.Name);
            j.WriteWords("reasons", item.Reasons);
        });
        json.WriteEndObject();
    }

    public static Adequacy Read(JsonCursor adequacy) => new(
        adequacy.Required("refused").Flag(),
        adequacy.Required("checks").Items(check => new AdequacyCheck(
            check.Required("name").Text(),
            check.Nullable("value")?.Number(),
            check.Nullable("limit")?.Number(),
            check.Required("passed").Flag(),
            check.Nullable("reason")?.Text())),
        adequacy.Required("canCarry").Items(name => name.Text()),
        adequacy.Required("cannotCarry").Items(item => new CannotCarry(
            item.Required("name").Text(),
            item.Required("reasons").Items(reason => reason.Text()))));
}
