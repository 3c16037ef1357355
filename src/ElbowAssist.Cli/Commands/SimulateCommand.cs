using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using ElbowAssist.Anatomy;
using ElbowAssist.Cli.Simulating;
using ElbowAssist.Phantom;
using ElbowAssist.Phantom.Injury;
using ElbowAssist.Phantom.Pose;

namespace ElbowAssist.Cli.Commands;

/// <summary><c>simulate</c>: films of invented patients with exact truth.</summary>
internal static class SimulateCommand
{
    private const int SmallestFilm = 64;
    private const int LargestFilm = 4096;
    private const double Grown = 18;

    public static Command Create()
    {
        var seed = new Option<ulong>("--seed") { Description = "Seed of the first patient; the next ones take the next seeds.", Required = true, HelpName = "N" };
        var count = new Option<int>("--count") { Description = "Number of patients.", DefaultValueFactory = _ => 1, HelpName = "K" };
        var output = new Option<string>("--out") { Description = "Folder for films and truth.", Required = true, HelpName = "DIR" };
        var views = new Option<View[]>("--view")
        {
            Description = "Views of each patient.",
            HelpName = "lateral|ap|both|oblique",
            DefaultValueFactory = _ => [View.Lateral, View.Ap],
            CustomParser = Views,
        };
        var ages = new Option<(double From, double To)>("--ages")
        {
            Description = "Ages in years.",
            HelpName = "FROM-TO",
            DefaultValueFactory = _ => (0.5, 90),
            CustomParser = Ages,
        };
        var injuries = new Option<InjuryChoice>("--injuries")
        {
            Description = $"Injuries: none, mixed, or names out of {string.Join(", ", InjuryCodes.All)}.",
            HelpName = "none|mixed|NAME,…",
            DefaultValueFactory = _ => InjuryChoice.Mixed,
            CustomParser = Injuries,
        };
        var adequacy = new Option<Adequacy>("--adequacy")
        {
            Description = "How well the films are positioned.",
            HelpName = "good|mixed|poor",
            DefaultValueFactory = _ => Adequacy.Mixed,
            CustomParser = Positioning,
        };
        var size = new Option<int>("--size") { Description = "Pixels along each side.", DefaultValueFactory = _ => 1024, HelpName = "PX" };
        var bones = new Option<string>("--bones")
        {
            Description = "Folder of an adult's bones to show in place of drawn ones: humerus.stl, ulna.stl, radius.stl (closed surfaces in one frame) "
                + "and bones.json, such as {\"schema\": \"elbowassist/bones/1\", \"unit\": \"mm\", \"side\": \"right\"}. Ages from 18, no injuries.",
            HelpName = "DIR",
        };
        var subject = new Option<Subject>("--subject")
        {
            Description = "What the films show: elbows; other body regions, to be told from elbows; or pictures that are no radiographs. "
                + "A picture without an elbow comes as it is and turned, mirrored and inverted, and its truth says what it shows.",
            HelpName = "elbow|near-miss|not-radiograph",
            DefaultValueFactory = _ => Subject.Elbow,
            CustomParser = Subjects,
        };
        Range(count, 1, 1_000_000);
        Range(size, SmallestFilm, LargestFilm);
        var command = new Command("simulate", "Simulate films with exact truth; every patient is invented.") { seed, count, output, views, ages, injuries, adequacy, size, bones, subject };
        command.Validators.Add(result => GrownAndWhole(result, bones, ages, injuries));
        command.Validators.Add(result => NothingOfElbows(result, subject, [views, ages, injuries, bones]));
        command.SetAction((parsed, cancellation) => Task.Run(
            () => (int)SimulateRun.Run(
                new SimulateRequest(
                    parsed.GetValue(seed),
                    parsed.GetValue(count),
                    parsed.GetValue(output)!,
                    parsed.GetValue(views)!,
                    new SimulationOptions
                    {
                        FromAgeYears = parsed.GetResult(bones) is null ? parsed.GetValue(ages).From : Math.Max(Grown, parsed.GetValue(ages).From),
                        ToAgeYears = parsed.GetValue(ages).To,
                        InjuredShare = parsed.GetValue(injuries)!.Share,
                        Injuries = parsed.GetValue(injuries)!.Kinds,
                        Adequacy = parsed.GetValue(adequacy),
                    },
                    parsed.GetValue(size),
                    parsed.GetValue(bones),
                    parsed.GetValue(subject)),
                cancellation),
            cancellation));
        return command;
    }

    /// <summary>Bones from files are an adult's and whole.</summary>
    private static void GrownAndWhole(
        CommandResult result, Option<string> bones, Option<(double From, double To)> ages, Option<InjuryChoice> injuries)
    {
        if (result.GetResult(bones) is null)
        {
            return;
        }

        if (result.GetResult(ages) is { Implicit: false } && result.GetValue(ages).From < Grown)
        {
            result.AddError("--bones shows an adult's bones: give --ages from 18, or leave it out.");
        }
        else if (result.GetResult(injuries) is { Implicit: false } && result.GetValue(injuries) is { Share: > 0 })
        {
            result.AddError("--bones shows whole bones: give --injuries none, or leave it out.");
        }
    }

    /// <summary>What is said of elbows says nothing of pictures without one.</summary>
    private static void NothingOfElbows(CommandResult result, Option<Subject> subject, IReadOnlyList<Option> ofElbows)
    {
        if (!result.Errors.Any() && result.GetValue(subject) != Subject.Elbow &&
            ofElbows.FirstOrDefault(o => result.GetResult(o) is { Implicit: false }) is { } other)
        {
            result.AddError($"{other.Name} is about elbows: leave it out, or give --subject elbow.");
        }
    }

    private static void Range(Option<int> option, int from, int to) => option.Validators.Add(result =>
    {
        if (result.Errors.Any())
        {
            return;
        }

        if (result.GetValueOrDefault<int>() is var number && (number < from || number > to))
        {
            result.AddError(string.Create(CultureInfo.InvariantCulture, $"{option.Name} takes a whole number from {from} to {to}."));
        }
    });

    private static View[]? Views(ArgumentResult result)
    {
        View[]? views = result.Tokens[0].Value switch
        {
            "lateral" => [View.Lateral],
            "ap" => [View.Ap],
            "both" => [View.Lateral, View.Ap],
            "oblique" => [View.Oblique],
            _ => null,
        };
        if (views is null)
        {
            result.AddError($"--view takes lateral, ap, both or oblique, not \"{result.Tokens[0].Value}\".");
        }

        return views;
    }

    private static InjuryChoice? Injuries(ArgumentResult result)
    {
        var text = result.Tokens[0].Value;
        if (text is "none" or "mixed")
        {
            return text == "none" ? InjuryChoice.None : InjuryChoice.Mixed;
        }

        var names = text.Split(',');
        if (names.FirstOrDefault(n => InjuryCodes.Parse(n) is null) is { } unknown)
        {
            result.AddError($"--injuries takes none, mixed, or names out of {string.Join(", ", InjuryCodes.All)}, not \"{unknown}\".");
            return null;
        }

        return new InjuryChoice(1, [.. names.Select(n => InjuryCodes.Parse(n)!.Value)]);
    }

    private static (double From, double To) Ages(ArgumentResult result)
    {
        var parts = result.Tokens[0].Value.Split('-');
        if (parts.Length == 2 && Years(parts[0]) is { } from && Years(parts[1]) is { } to && from <= to)
        {
            return (from, to);
        }

        result.AddError($"--ages takes years such as 2-12, from 0.5 to 100, not \"{result.Tokens[0].Value}\".");
        return default;
    }

    private static double? Years(string text) =>
        double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var years) && years is >= 0.5 and <= 100 ? years : null;

    private static Subject Subjects(ArgumentResult result)
    {
        switch (result.Tokens[0].Value)
        {
            case "elbow":
                return Subject.Elbow;
            case "near-miss":
                return Subject.NearMiss;
            case "not-radiograph":
                return Subject.NotRadiograph;
            default:
                result.AddError($"--subject takes elbow, near-miss or not-radiograph, not \"{result.Tokens[0].Value}\".");
                return default;
        }
    }

    private static Adequacy Positioning(ArgumentResult result)
    {
        switch (result.Tokens[0].Value)
        {
            case "good":
                return Adequacy.Good;
            case "mixed":
                return Adequacy.Mixed;
            case "poor":
                return Adequacy.Poor;
            default:
                result.AddError($"--adequacy takes good, mixed or poor, not \"{result.Tokens[0].Value}\".");
                return default;
        }
    }

    /// <summary>How many elbows are injured, and how; no kinds for all of them.</summary>
    private sealed record InjuryChoice(double Share, IReadOnlyList<InjuryKind> Kinds)
    {
        public static InjuryChoice None { get; } = new(0, []);

        public static InjuryChoice Mixed { get; } = new(new SimulationOptions().InjuredShare, []);
    }
}
