using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using ElbowAssist.Anatomy;
using ElbowAssist.Exchange.Json;
using ElbowAssist.Exchange.Json.Facts;

namespace ElbowAssist.Cli.Commands;

/// <summary>Options that say what an image cannot: age, sex, side, view, context, spacing.</summary>
internal sealed class FactOptions
{
    private readonly Option<int?> age = new("--age")
    {
        Description = "Age in years.",
        HelpName = "YEARS",
        CustomParser = r => Number(r, 0, 125, "--age takes years from 0 to 125") is { } years ? (int)Math.Floor(years * 12) : null,
    };

    private readonly Option<int?> ageMonths = new("--age-months")
    {
        Description = "Age in months.",
        HelpName = "N",
        CustomParser = r => Number(r, 0, 1500, "--age-months takes months from 0 to 1500") is { } months ? (int)Math.Floor(months) : null,
    };

    private readonly Option<Sex?> sex = Words("--sex", "Sex.", "F|M", Vocabularies.Sex, s => s.ToUpperInvariant());

    private readonly Option<Side?> side = Words("--side", "Side of the body.", "left|right", Vocabularies.Side, Lower);

    private readonly Option<View?> view = Words("--view", "View, if it is known.", "lateral|ap|oblique", Vocabularies.View, Lower);

    private readonly Option<FilmContext?> context = Words(
        "--context", "Why and when the film was taken.", "acute|after-reduction|cast|fixation|follow-up", Vocabularies.Context, Lower);

    private readonly Option<(double Row, double Column)?> spacing = new("--spacing")
    {
        Description = "Distance between rows, and between columns if it differs, in millimetres in the patient plane.",
        HelpName = "ROW[,COL]",
        CustomParser = Spacing,
    };

    public void AddTo(Command command)
    {
        foreach (var option in new Option[] { age, ageMonths, sex, side, view, context, spacing })
        {
            command.Add(option);
        }

        command.Validators.Add(result =>
        {
            if (result.GetResult(age) is not null && result.GetResult(ageMonths) is not null)
            {
                result.AddError("Give --age or --age-months, not both.");
            }
        });
    }

    public FilmFacts Read(ParseResult parsed)
    {
        var spaced = parsed.GetValue(spacing);
        return new FilmFacts("option")
        {
            AgeMonths = parsed.GetValue(ageMonths) ?? parsed.GetValue(age),
            Sex = parsed.GetValue(sex),
            Side = parsed.GetValue(side),
            View = parsed.GetValue(view),
            Context = parsed.GetValue(context),
            RowSpacingMm = spaced?.Row,
            ColumnSpacingMm = spaced?.Column,
        };
    }

    private static string Lower(string word) => word.ToLowerInvariant();

    private static Option<T?> Words<T>(string name, string description, string help, Vocabulary<T> vocabulary, Func<string, string> fold)
        where T : struct, Enum => new(name)
        {
            Description = description,
            HelpName = help,
            CustomParser = result =>
            {
                if (vocabulary.TryParse(fold(result.Tokens[0].Value), out var value))
                {
                    return value;
                }

                result.AddError($"{name} takes {vocabulary.Choices}, not \"{result.Tokens[0].Value}\".");
                return null;
            },
        };

    private static double? Number(ArgumentResult result, double from, double to, string rule)
    {
        var text = result.Tokens[0].Value;
        if (double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number) && number >= from && number <= to)
        {
            return number;
        }

        result.AddError($"{rule}, not \"{text}\".");
        return null;
    }

    private static (double Row, double Column)? Spacing(ArgumentResult result)
    {
        var text = result.Tokens[0].Value;
        var parts = text.Split(',');
        var numbers = parts
            .Select(p => double.TryParse(p, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var mm) && mm is > 0 and <= 10 ? mm : double.NaN)
            .ToArray();
        if (numbers.Length is 1 or 2 && numbers.All(double.IsFinite))
        {
            return (numbers[0], numbers[^1]);
        }

        result.AddError($"--spacing takes millimetres such as 0.14 or 0.14,0.15, not \"{text}\".");
        return null;
    }
}
