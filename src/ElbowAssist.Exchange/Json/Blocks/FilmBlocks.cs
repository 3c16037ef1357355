using System.Text.Json;
using ElbowAssist.Anatomy;
using ElbowAssist.Reading;

namespace ElbowAssist.Exchange.Json.Blocks;

/// <summary>The blocks about the film and the patient that readings and truth files share.</summary>
internal static class FilmBlocks
{
    public static void WriteImage(Utf8JsonWriter json, ImageFacts image)
    {
        json.WriteStartObject("image");
        json.WriteString("file", image.File);
        json.WriteNumber("width", image.Width);
        json.WriteNumber("height", image.Height);
        json.WriteNumberOrNull("rowSpacingMm", image.RowSpacingMm);
        json.WriteNumberOrNull("columnSpacingMm", image.ColumnSpacingMm);
        json.WriteString("spacingSource", image.SpacingSource);
        json.WriteString("sha256", image.Sha256);
        json.WriteEndObject();
    }

    public static ImageFacts ReadImage(JsonCursor image) => new(
        image.Required("file").Text(),
        Positive(image.Required("width")),
        Positive(image.Required("height")),
        Spacing(image.Nullable("rowSpacingMm")),
        Spacing(image.Nullable("columnSpacingMm")),
        image.Required("spacingSource").Text(),
        image.Required("sha256").Text());

    public static void WriteView(Utf8JsonWriter json, ViewFinding view)
    {
        json.WriteStartObject("view");
        json.WriteString("name", Vocabularies.View.WordOf(view.Name));
        json.WriteFigures("probabilities", view.Probabilities);
        json.WriteNumberOrNull("errorDegrees", view.ErrorDegrees);
        json.WriteEndObject();
    }

    public static ViewFinding ReadView(JsonCursor view) => new(
        view.Required("name").Word(Vocabularies.View),
        view.Required("probabilities").Figures(),
        view.Nullable("errorDegrees")?.Number());

    public static void WritePatient(Utf8JsonWriter json, Side side, Patient patient, FilmContext context)
    {
        json.WriteString("side", Vocabularies.Side.WordOf(side));
        json.WriteStartObject("patient");
        json.WriteNumberOrNull("ageMonths", patient.AgeMonths);
        json.WriteString("sex", patient.Sex is { } sex ? Vocabularies.Sex.WordOf(sex) : null);
        json.WriteEndObject();
        json.WriteString("context", Vocabularies.Context.WordOf(context));
    }

    public static Patient ReadPatient(JsonCursor patient) => new(
        AgeMonths(patient.Nullable("ageMonths")),
        patient.Nullable("sex")?.Word(Vocabularies.Sex));

    public static int? AgeMonths(JsonCursor? cursor) => cursor is { } age
        ? age.Integer() is >= 0 and <= 1500 and var months ? months : throw age.Fail("must be an age in months from 0 to 1500")
        : null;

    public static double? Spacing(JsonCursor? cursor) => cursor is { } spacing
        ? spacing.Number() is > 0 and <= 10 and var mm ? mm : throw spacing.Fail("must be millimetres above 0 and up to 10")
        : null;

    public static int Positive(JsonCursor cursor) =>
        cursor.Integer() is > 0 and var number ? number : throw cursor.Fail("must be above 0");
}
