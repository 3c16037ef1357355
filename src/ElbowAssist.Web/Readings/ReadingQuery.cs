using System.ComponentModel;
using System.Globalization;
using ElbowAssist.Exchange.Json;
using ElbowAssist.Exchange.Json.Facts;
using Microsoft.AspNetCore.Mvc;

namespace ElbowAssist.Web.Readings;

/// <summary>What a caller says of a film besides its pixels.</summary>
internal sealed class ReadingQuery
{
    [FromQuery, Description("File name, for the reading")]
    public string? Name { get; init; }

    [FromQuery, Description("lateral, ap or oblique; recognised if not said")]
    public string? View { get; init; }

    [FromQuery, Description("left or right")]
    public string? Side { get; init; }

    [FromQuery, Description("F or M")]
    public string? Sex { get; init; }

    [FromQuery, Description("acute, after-reduction, cast, fixation or follow-up")]
    public string? Context { get; init; }

    [FromQuery, Description("Age in completed months")]
    public int? AgeMonths { get; init; }

    [FromQuery, Description("Distance between rows in millimetres in the patient plane")]
    public double? RowSpacingMm { get; init; }

    [FromQuery, Description("Distance between columns in millimetres in the patient plane")]
    public double? ColumnSpacingMm { get; init; }

    [FromQuery, Description("Of a film json, svg, png, coco, fhir, sr or gsps; of a study json, html, text, fhir or zip; json if not said")]
    public string? Format { get; init; }

    [FromQuery, Description("For FHIR: the reference to the patient in the receiving system, e.g. Patient/123")]
    public string? Patient { get; init; }

    /// <summary>What of the query decides the reading, in one text.</summary>
    public string Key => string.Join('|', View, Side, Sex, Context, AgeMonths?.ToString(CultureInfo.InvariantCulture),
        RowSpacingMm?.ToString("R", CultureInfo.InvariantCulture), ColumnSpacingMm?.ToString("R", CultureInfo.InvariantCulture), Name);

    /// <summary>The facts, or the sentence why they cannot be used.</summary>
    public (FilmFacts? Facts, string? Problem) Facts()
    {
        if (Wrong(View, Vocabularies.View, out var view) || Wrong(Side, Vocabularies.Side, out var side) ||
            Wrong(Sex, Vocabularies.Sex, out var sex) || Wrong(Context, Vocabularies.Context, out var context))
        {
            return (null, $"view is {Vocabularies.View.Choices}; side is {Vocabularies.Side.Choices}; sex is F or M; context is {Vocabularies.Context.Choices}.");
        }

        if (AgeMonths is < 0 or > 1500 || RowSpacingMm is not (null or (> 0 and <= 10)) || ColumnSpacingMm is not (null or (> 0 and <= 10)))
        {
            return (null, "ageMonths goes from 0 to 1500, a spacing from 0 to 10 mm.");
        }

        return (new FilmFacts("option")
        {
            View = view,
            Side = side,
            Sex = sex,
            Context = context,
            AgeMonths = AgeMonths,
            RowSpacingMm = RowSpacingMm ?? ColumnSpacingMm,
            ColumnSpacingMm = ColumnSpacingMm ?? RowSpacingMm,
        }, null);
    }

    private static bool Wrong<T>(string? word, Vocabulary<T> vocabulary, out T? value)
        where T : struct, Enum
    {
        value = null;
        if (word is null)
        {
            return false;
        }

        var known = vocabulary.TryParse(word, out var parsed);
        value = known ? parsed : null;
        return !known;
    }
}
